import type { Path } from './located-document.ts';

/**
 * How what one key cannot tell alone is reported: where, what is expected there, another way out, and what was found;
 * left out, the value that stands there.
 */
export type Report = (path: Path, expected: string, hint?: string, found?: string) => void;
