/** One step of the database's shape. */
export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
}
