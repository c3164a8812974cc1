/** A path of this program; anything else leads to the front page. */
export function ownAddress(address: string | undefined): string {
  return address !== undefined && /^\/(?![/\\])[^\s\\]*$/.test(address) ? address : '/';
}

/** What a page was asked by; the front page's address for what would be read as another host's, such as `//host` or `/\host`. */
export function addressAsked({ originalUrl }: { readonly originalUrl: string }): string {
  return /^\/(?![/\\])/.test(originalUrl) ? originalUrl : '/';
}
