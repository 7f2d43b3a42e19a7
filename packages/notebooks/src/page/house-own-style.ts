/** Style that only one page needs. */
export function ownStyle(css: string): HTMLElement {
  const style = document.createElement('style');
  style.textContent = css;
  return style;
}
