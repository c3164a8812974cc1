/** A path of this program; anything else leads to the front page. */
export function ownAddress(address: string | undefined): string {
  return address !== undefined && /^\/(?![/\\])[^\s\\]*$/.test(address) ? address : '/';
}
