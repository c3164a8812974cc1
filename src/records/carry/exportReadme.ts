/** Lies in every export, for whoever opens it without the program. */
export const README = `Everything this shop has saved, as of the time in shop.json.

For people and their spreadsheets (comma separated, UTF-8; a cell that begins with = + - @ or a tab has a ' in front,
so that no spreadsheet runs it as a formula):

  jobs.csv       one line for each job as it is now
  readings.csv   every reading ever taken, corrected ones too: "replaces" names the reading it corrects, and a
                 reading without value_mm withdraws it. Lengths in mm, angles in degrees from stud 1
  revisions.csv  every change of every job: who, when (UTC), why; the column body holds the section as JSON
  photos.csv     every photo: what it shows, its file below photos, and the SHA-256 of its content (hash)
  catalogue.csv  every revision of cover types, studs, nuts, washers, flexplate stacks, gauges, steels,
                 linings, lathes and the shop limits; the columns body and typed hold JSON: the figures
                 in mm, N·m and MPa, and what was typed where that says more
  slips.csv      every counter slip: what was asked and answered, as JSON
  slip-stock.csv what each slip took from the shelf, and what went back: who, when (UTC), why
  master-checks.csv
                 every check of a gauge on a master, in mm; master-checks-withdrawn.csv names those taken back, and why
  studies.csv    every study of a gauge: who reads which cover, and in which order, as JSON; study-readings.csv holds each
                 reading in mm by its place in that order, study-readings-withdrawn.csv those taken back, and why,
                 studies-stopped.csv the studies that were stopped early
  people.csv     who works here and their role; passwords never leave the shop

For the program, exact to the last digit:

  data/*.jsonl   one line of JSON for each row of each table, nothing changed or left out
  photos/...     the photos as they were sent, named by job and number: job-1001-2.jpg
  shop.json      how many rows there are, the SHA-256 of each file of lines, and the photos

To make the same shop again in an empty folder:  DATA_DIR=... npm run import -- THIS-FOLDER
After that everybody needs a new password, and every script a new token.
`;
