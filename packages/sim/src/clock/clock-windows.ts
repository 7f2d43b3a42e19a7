/** Windows of local clock time, "HH:MM-HH:MM", possibly past midnight. */

function minuteOf(text: string): number {
  return Number(text.slice(0, 2)) * 60 + Number(text.slice(3, 5));
}

/** 1 for each of the 1,440 minutes of a day that lies in any of the windows; a window that ends where it starts is the whole day. */
export function minutesInWindows(windows: readonly string[]): Uint8Array {
  const inside = new Uint8Array(1440);
  for (const window of windows) {
    const [from = '', to = ''] = window.split('-');
    const start = minuteOf(from);
    const length = (minuteOf(to) - start + 1440) % 1440 || 1440;
    for (let k = 0; k < length; k++) inside[(start + k) % 1440] = 1;
  }
  return inside;
}
