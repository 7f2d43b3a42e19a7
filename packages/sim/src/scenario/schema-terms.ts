/** The words that the schema is written in: shares, amounts, names, times. */
import { z } from 'zod';

export const fraction = () => z.number().min(0).max(1);
/** Beyond any household's watts and watt-hours: keeps slips of the pen away from sums. */
export const MOST = 1_000_000;
export const positive = () => z.number().positive().max(MOST);
export const atLeastZero = () => z.number().min(0).max(MOST);
export const identifier = () =>
  z
    .string()
    .regex(/^[a-z][a-z0-9-]{0,39}$/, 'lower-case letters, digits and hyphens, starting with a letter')
    .describe('A short name used to refer to this item: lower-case letters, digits, hyphens.');
/** Beside line breaks and tabs: a terminal that they reach takes them as commands. */
const CONTROL_CHARACTERS = /[^\P{Cc}\t\n\r]/u;

/** A text of the writer's own, shown as it stands. */
export const text = () =>
  z.string().refine((each) => !CONTROL_CHARACTERS.test(each), 'a text without control characters');
export const title = () => text().min(1).max(120);

/** "06:30-22:00" (local civil time; may pass midnight; 24:00 is the day's end). */
export const clockWindow = z
  .string()
  .regex(
    /^([01]\d|2[0-3]):[0-5]\d-(([01]\d|2[0-3]):[0-5]\d|24:00)$/,
    'a window of local clock time such as "06:30-22:00"',
  );
export const clockWindows = () => z.array(clockWindow).min(1);
const month = () => z.int().min(1).max(12);
/** Months in which an outage starts. */
export const startMonths = () =>
  z
    .array(month())
    .min(1)
    .refine((months) => new Set(months).size === months.length, 'each month once');
export const twelve = (each: z.ZodNumber) => z.array(each).length(12, 'twelve numbers, January first');
