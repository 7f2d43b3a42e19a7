/** How settings are worded: in the controls, and wherever it is said what was changed. */
export const stormWords = (led: boolean) => (led ? 'is still overhead' : 'is not looked at');
export const switchWords = (by: 'person' | 'switch') =>
  by === 'person' ? 'by a person, awake and looking' : 'by an automatic switch';
