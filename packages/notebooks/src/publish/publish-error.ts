/** A page cannot be published, in words for the person who asked. */
export class PublishError extends Error {
  override readonly name = 'PublishError';
}
