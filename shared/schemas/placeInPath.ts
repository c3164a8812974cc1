const LISTS: Readonly<Record<string, (index: number) => string>> = {
  stations: (index) => ` at station ${index + 1}`,
  marks: (index) => ` of mark ${index + 1}`,
  layers: (index) => ` of layer ${index + 1}`,
  studs: (index) => ` of stud ${index + 1} in the list`,
  cuts: (index) => ` of cut ${index + 1}`,
  items: (index) => ` of item ${index + 1}`,
  inspectionFailures: (index) => ` of inspection failure ${index + 1}`,
  wallMm: (index) => `, reading ${index + 1},`,
};

/** Where in a list a field stands, in words: `stations.3.wallMm.1` is " at station 4, reading 2,". */
export function placeInPath(path: readonly PropertyKey[]): string {
  return path
    .map((step, i) => (typeof step === 'number' ? (LISTS[String(path[i - 1])]?.(step) ?? '') : ''))
    .join('');
}
