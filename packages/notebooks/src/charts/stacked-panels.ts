/** Several pictures of one width, one below the other, as one picture. */
export function stackedPanels(panels: readonly SVGSVGElement[]): SVGSVGElement {
  const outer = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  let top = 0;
  let width = 0;
  for (const panel of panels) {
    const { width: wide, height } = panel.viewBox.baseVal;
    panel.setAttribute('y', String(top));
    panel.setAttribute('overflow', 'visible');
    panel.style.setProperty('overflow', 'visible');
    outer.append(panel);
    [top, width] = [top + height, Math.max(width, wide)];
  }
  outer.setAttribute('width', String(width));
  outer.setAttribute('height', String(top));
  outer.setAttribute('viewBox', `0 0 ${width} ${top}`);
  return outer;
}
