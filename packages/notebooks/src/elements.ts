/** Elements from templates. Every interpolated string becomes text or an attribute's value, never markup. */
import * as htl from 'htl';

type Template<T> = (strings: TemplateStringsArray, ...values: readonly unknown[]) => T;

/** For templates of one element. */
export const html = htl.html as unknown as Template<HTMLElement>;
export const svg = htl.svg as unknown as Template<SVGElement>;
