/** One step of the database's shape, written for each database the program runs on. See DEVELOPERS.md, "Records". */
export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sqlite: string;
  readonly postgres: string;
}
