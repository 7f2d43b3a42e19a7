/** A number to a tenth, with a true minus: `−0.3`, `21.9`. */
export function signedTenths(value: number): string {
  const text = (Math.round(Math.abs(value) * 10) / 10).toFixed(1);
  return value < 0 && text !== '0.0' ? `−${text}` : text;
}
