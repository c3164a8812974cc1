/** What no screen, sheet, slip or sentence may say, and what to say instead. */
const REFUSED: readonly (readonly [word: RegExp, say: string])[] = [
  [/\bfamil(y|ies)\b/i, 'cover type'],
  [/\btracks?\b/i, 'friction surface'],
  [/\bboss(es)?\b/i, 'center of the cover'],
  [/\bdiall(ed|ing)\b|\bdial(ed)? in\b/i, 'depth of cut; indicated in, with shims'],
  [/\bface heights?\b/i, 'indicator reading'],
  [/\bclock positions?\b/i, 'angle from stud 1'],
  [/\bset anew\b/i, 'replaced stud'],
  [/\bbare numbers?\b/i, 'units when none are typed'],
  [/\bretighten\w*\b|\btighten(ed)? again\b/i, 're-torqued'],
  [/\bfrom solid\b/i, 'billet'],
  [/\b(stud|hole) circles?\b/i, 'bolt circle'],
  [/\bnut bearing\b/i, 'washer-face diameter'],
  [/\bmarks? left\b/i, 'heat mark remaining'],
  [/\bfor jerks\b/i, 'allowance for shock load'],
  [/\bspread of the preload\b/i, 'torque-wrench scatter'],
  [/\bhow sure to be\b/i, 'confidence required'],
  [/\bcriteri(a|on)\b/i, 'shop limits'],
  [/\brest(s|ed) on\b/i, 'basis'],
  [/\bdo(es)? not do\b/i, 'will not work'],
  [/\bnobody has said\b/i, 'no limit is set'],
  [/\bat all\b/i, 'leave it out'],
  [/\bempty:/i, 'blank'],
  [/\bput(ting)? right\b|\bpast mending\b/i, 'fix; beyond repair'],
  [/\boffered up\b/i, 'going in'],
  [/\bsmallest cut\b/i, 'least cut'],
  [/\bthreads beyond\b/i, 'threads past the nut'],
  [/\bprojects \d/i, 'length from pad'],
  [/\bpart them\b/i, 'separate with ;'],
  [/\b(dis|un)?colour\w*/i, 'color'],
  [/\b\w*(milli|micro|kilo|centi)metres?\b|\bmetres?\b/i, 'millimeter'],
  [/\bcatalogues?\b/i, 'catalog'],
  [/\bgrey\b/i, 'gray'],
  [/\bcentr(e|es|ed|ing)\b/i, 'center'],
  [/\bmoulds?\b/i, 'mold'],
  [/\blicences?\b/i, 'license'],
  [/\bprogrammes?\b/i, 'program'],
  [/\b(label|travel|model|level|cancel|signal|channel)l(ed|ing)\b/i, 'one l'],
  [/\b(analy|recogni|reali|organi|authori|minimi|maximi|summari|equali|normali)s(e|ed|es|ing|ation)\b/i, 'z'],
  [/\b(behavi|fav|neighb|hono|vap|harb)our\w*/i, 'or'],
  [
    /\b(fib|lit|cali)res?\b|\bkerb|\btyres?\b|\baluminium\b|\bspanners?\b|\blorr(y|ies)\b|\bwhilst\b|\bper cent\b/i,
    'as in the US',
  ],
];

/** Each refused word in a text, with what to say; names of fields, paths and ids are no words of the screen. */
export function refusedIn(text: string): string[] {
  const words = text
    .replace(/\/\S+/g, ' ')
    .replace(/[\w.]*[a-z\d][A-Z]\w*/g, ' ')
    .replace(/\b\w+(\.\w+)+/g, ' ')
    .replace(/\b[a-z]+(_[a-z]+)+/g, ' ');
  return REFUSED.flatMap(([refused, say]) => {
    const found = refused.exec(words);
    return found ? [`${found[0].toLowerCase()} (say: ${say})`] : [];
  });
}
