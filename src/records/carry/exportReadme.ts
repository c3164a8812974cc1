/** Lies in every export, for whoever opens it without the program. */
export const README = `Everything this shop has kept, as it was at the time in shop.json.

For people and their spreadsheets (comma separated, UTF-8; in cells that begin with = + - @ or a tab, a ' stands first
so that no spreadsheet takes them for a formula):

  jobs.csv       one line for each job as it now stands
  readings.csv   every reading ever taken, those since corrected too: "replaces" names the reading it corrects, and a
                 reading without value_mm withdraws it. Lengths in mm, angles in degrees from stud 1
  revisions.csv  every change of every job: who, when (UTC), why, and what it then said, as JSON
  photos.csv     every photo: what it shows, and the name of its file below files
  catalogue.csv  every revision of cover families, studs, stacks and the shop's criteria,
                 with what was typed for lengths, torques and pressures where that says more
  people.csv     who works here and what they may do; passwords never leave the shop

For the program, exact to the last digit:

  data/*.jsonl   one line of JSON for each row of each table, nothing changed or left out
  files/ab/...   the photos as they were sent, each named by the SHA-256 of its content
  shop.json      how many rows there are, and the SHA-256 of each file of lines

To make the same shop again in an empty folder:  DATA_DIR=... npm run import -- THIS-FOLDER
Everybody then gets a new password, and scripts a new token.
`;
