/** What Vite resolves and TypeScript cannot see. */
declare module '*?worker&inline' {
  /** A worker whose code is inside the page (started from a blob). */
  const InlineWorker: new (options?: { name?: string }) => Worker;
  export default InlineWorker;
}

declare module '*.csv?raw' {
  /** The text of a file, put into the page while it is built. */
  const text: string;
  export default text;
}

declare module '*.css?inline' {
  const css: string;
  export default css;
}

declare module '@observablehq/inputs' {
  interface Labelled {
    readonly label?: string | Node;
    readonly disabled?: boolean;
  }
  interface Choice<T> extends Labelled {
    readonly format?: (value: T) => string;
  }
  /** An element whose `value` is read and set, and which sends `input` when a person changes it. */
  export type Input<T> = HTMLElement & { value: T };
  export function select<T>(data: readonly T[], options?: Choice<T> & { readonly value?: T }): Input<T>;
  export function checkbox<T>(
    data: readonly T[],
    options?: Choice<T> & { readonly value?: readonly T[] },
  ): Input<T[]>;
  export function number(
    extent: readonly [number, number],
    options?: Labelled & { readonly value?: number; readonly step?: number },
  ): Input<number>;
  export function text(
    options?: Labelled & {
      readonly value?: string;
      readonly maxlength?: number;
      readonly spellcheck?: boolean;
    },
  ): Input<string>;
  export function form<T extends Record<string, HTMLElement & { value: unknown }>>(
    inputs: T,
    options?: { readonly template?: (inputs: T) => HTMLElement },
  ): Input<{ -readonly [K in keyof T]: T[K]['value'] }>;
}
