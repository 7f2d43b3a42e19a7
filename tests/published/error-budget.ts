/** Errors against a source, counted: a comparison that did not happen must not pass for one that did. */
export class ErrorBudget {
  #count = 0;
  #sum = 0;
  #sumOfSizes = 0;
  #worst = 0;
  #worstAt = '';

  /** @param where told when the worst error is too large. */
  add(actual: number, expected: number, where = ''): void {
    const error = actual - expected;
    if (!Number.isFinite(error))
      throw new Error(`no number to compare ${where}: ${actual} against ${expected}`);
    this.#count += 1;
    this.#sum += error;
    this.#sumOfSizes += Math.abs(error);
    if (Math.abs(error) <= this.#worst) return;
    this.#worst = Math.abs(error);
    this.#worstAt = where;
  }

  get count(): number {
    return this.#count;
  }
  /** Mean of the errors with their signs. */
  get bias(): number {
    return this.#sum / this.#count;
  }
  /** Mean size of the errors. */
  get mean(): number {
    return this.#sumOfSizes / this.#count;
  }
  get worst(): number {
    return this.#worst;
  }
  get worstAt(): string {
    return this.#worstAt;
  }
}
