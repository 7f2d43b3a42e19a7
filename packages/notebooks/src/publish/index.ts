/** Publishing pages. Node only. */
export {
  OUR_PAGES,
  publishPages,
  readyPage,
  type PublishedPage,
  type PublishOptions,
} from './publish-pages.ts';
export { PublishError } from './publish-error.ts';
