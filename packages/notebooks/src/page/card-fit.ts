/** The largest type at which the card fits one side, whichever of the two papers it is printed on. */

/** Sizes tried, points. Below the smallest a card by a panel cannot be read at arm's length (our judgement). */
export const LARGEST_PT = 15;
export const SMALLEST_PT = 8;
const STEP_PT = 0.25;

/**
 * The side that Letter (215.9 × 279.4 mm, ANSI Y14.1) and A4 (210 × 297 mm, ISO 216) have in common, less the margins
 * of 11 mm that the page asks for and a millimetre to spare.
 */
const SIDE = { widthMm: 210 - 22, heightMm: 279.4 - 22 - 1 };

export interface CardFit {
  readonly typePt: number;
  /** False: too much for one side even in the smallest type. */
  readonly fits: boolean;
}

/** Measures a copy laid out as it will be printed, out of sight. */
export function fitCard(card: HTMLElement): CardFit {
  const copy = card.cloneNode(true) as HTMLElement;
  copy.classList.add('as-printed');
  copy.setAttribute('aria-hidden', 'true');
  copy.style.setProperty('--card-width', `${SIDE.widthMm}mm`);
  document.body.append(copy);
  const fitsAt = (typePt: number) => {
    copy.style.setProperty('--card-type', `${typePt}pt`);
    return (
      copy.getBoundingClientRect().height <= (SIDE.heightMm * 96) / 25.4 &&
      copy.scrollWidth <= copy.clientWidth
    );
  };
  let typePt = LARGEST_PT;
  while (typePt > SMALLEST_PT && !fitsAt(typePt)) typePt -= STEP_PT;
  const fits = fitsAt(typePt);
  copy.remove();
  return { typePt, fits };
}
