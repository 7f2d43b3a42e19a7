/** A size as people say it: megabytes, and kilobytes below a tenth of one. */
export function fileSize(bytes: number): string {
  return bytes < 1e5 ? `${(bytes / 1000).toFixed(bytes < 1e4 ? 1 : 0)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
