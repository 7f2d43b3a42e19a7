/** Version of the model: part of every published figure. A test holds it to package.json. */
export const VERSION = '0.4.0';
