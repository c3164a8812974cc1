/** Asked for a page or a record that is not there; the sentence says where to look. */
export class NoSuchPage extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'NoSuchPage';
  }
}
