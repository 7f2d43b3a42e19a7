/** How times of day and temperatures are written: the one home of that choice. */
export interface Look {
  readonly clock: 12 | 24;
  readonly temperature: 'C' | 'F';
}

/** Minutes after midnight in words: "07:05" or "7:05 am". */
export function timeOfDay(minuteOfDay: number, style: Look['clock']): string {
  const [hour, minute] = [Math.floor(minuteOfDay / 60), String(minuteOfDay % 60).padStart(2, '0')];
  if (style === 24) return `${String(hour).padStart(2, '0')}:${minute}`;
  return `${hour % 12 || 12}:${minute}\u00a0${hour % 24 < 12 ? 'am' : 'pm'}`;
}

/** Every "06:30" in a text, as the reader writes it. */
export function clockTimesIn(text: string, style: Look['clock']): string {
  if (style === 24) return text;
  return text.replace(/\b([01]?\d|2[0-4]):([0-5]\d)\b/g, (_, hour: string, minute: string) =>
    timeOfDay(Number(hour) * 60 + Number(minute), style),
  );
}

/** Every "6:30 am", "6 pm" in a text back to "06:30", "18:00"; other times stay as they are. */
export function clockTimesFrom(text: string): string {
  return text.replace(
    /\b(0?[1-9]|1[0-2])(?::([0-5]\d))?\s*([ap])\.?m\b\.?/gi,
    (_, hour: string, minute: string | undefined, half: string) => {
      const from = half.toLowerCase() === 'p' ? 12 : 0;
      return `${String((Number(hour) % 12) + from).padStart(2, '0')}:${minute ?? '00'}`;
    },
  );
}

/** °C in the reader's degrees. */
export function inDegrees(celsius: number, { temperature }: Pick<Look, 'temperature'>): number {
  return temperature === 'F' ? celsius * 1.8 + 32 : celsius;
}

/** The reader's degrees in °C. */
export function celsiusFrom(degrees: number, { temperature }: Pick<Look, 'temperature'>): number {
  return temperature === 'F' ? (degrees - 32) / 1.8 : degrees;
}

/** "−4 °C", "25 °F": whole degrees with a minus sign, and the unit on the same line. */
export function degreesText(celsius: number, look: Pick<Look, 'temperature'>): string {
  const whole = Math.round(inDegrees(celsius, look));
  return `${whole < 0 ? '−' : ''}${Math.abs(whole)}\u00a0°${look.temperature}`;
}

/**
 * Every "4.4 °C" in a text, in the reader's degrees. Whole ones of °F: a limit such as 40 °F is a whole number where it
 * is written in °F, and a tenth would claim more than anybody knows.
 */
export function degreesIn(text: string, look: Pick<Look, 'temperature'>): string {
  if (look.temperature === 'C') return text;
  return text.replace(/([-−]?\d+(?:\.\d+)?)\s*°C/g, (_, number: string) =>
    degreesText(Number(number.replace('−', '-')), look),
  );
}
