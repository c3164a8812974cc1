// What a gauge or a person types, read on the tablet itself, so that a doubtful value is asked about at once even
// where there is no connection. The server reads every reading again; what it reads is what counts.

(() => {
  const MM = { mm: 1, cm: 10, um: 0.001, in: 25.4, thou: 0.0254 };
  const UNIT = {
    '': '',
    mm: 'mm',
    cm: 'cm',
    um: 'um',
    µm: 'um',
    μm: 'um',
    in: 'in',
    '"': 'in',
    inch: 'in',
    thou: 'thou',
  };
  const FIGURE = /^([+-]?)(?:(\d+|\d*\.\d+)|(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)) ?(\D*)$/;
  const SLIPS = [10, 100, 1000, 0.1, 0.01, 0.001, 25.4, 1 / 25.4];

  /** The value in mm of a typed length, or null where this tablet cannot read it. `sign` is 'point' or 'comma'. */
  function readLength(text, unit, sign) {
    const plain = text
      .trim()
      .replace(/[−‐‑–]/g, '-')
      .replace(/[⁄∕]/g, '/')
      .replace(/\s+/g, ' ');
    if (sign === 'comma' && plain.includes('.')) return null;
    const found = FIGURE.exec(sign === 'comma' ? plain.replace(',', '.') : plain);
    if (!found) return null;
    const [, minus, decimal, whole, over, under, unitText] = found;
    const named = UNIT[unitText.trim().toLowerCase()];
    if (named === undefined) return null;
    const used = named === '' ? unit : named;
    const fraction = decimal === undefined;
    if (fraction && used !== 'in') return null;
    if (
      fraction &&
      (![2, 4, 8, 16, 32, 64, 128].includes(Number(under)) ||
        (whole !== undefined && Number(over) >= Number(under)))
    )
      return null;
    const number = fraction ? Number(whole ?? 0) + Number(over) / Number(under) : Number(decimal);
    return (minus === '-' ? -1 : 1) * number * MM[used];
  }

  /** What was probably meant by a text that is no length here: the other decimal sign, or a fraction of an inch. */
  function meantLength(text, unit, sign) {
    const [other, here] = sign === 'comma' ? ['.', ','] : [',', '.'];
    const swapped = text.trim().replace(other, here);
    const tries = [swapped, `${text.trim()} in`];
    return tries.find((one) => one !== text.trim() && readLength(one, unit, sign) !== null) ?? null;
  }

  function figure(mm, unit, sign) {
    const text = String(Number((mm / MM[unit]).toPrecision(6)));
    return `${sign === 'comma' ? text.replace('.', ',') : text} ${unit}`;
  }

  /** A question about a value far from what this cover leads one to expect; null when there is none. */
  function doubtLength(kind, mm, typed, nominalMm, unit, sign) {
    if (!(nominalMm > 0)) return null;
    const number = /^[+-]?[\d.,/ -]*/.exec(typed.trim())[0].trim();
    const said = `${number} ${UNIT[typed.trim().slice(number.length).trim().toLowerCase()] || unit}`;
    if (kind !== 'wall') {
      if (Math.abs(mm) < (kind === 'face' ? nominalMm / 2 : nominalMm)) return null;
      const what = kind === 'face' ? 'a face height' : 'the depth of a mark';
      return {
        question: `${typed} as ${what}? The wall when new is ${figure(nominalMm, unit, sign)}. Measure again, or confirm it.`,
        meant: null,
      };
    }
    const share = mm / nominalMm;
    if (share >= 0.5 && share <= 1.5) return null;
    const likely = SLIPS.filter((slip) => share / slip >= 0.5 && share / slip <= 1.5).sort(
      (a, b) => Math.abs(Math.log(share / a)) - Math.abs(Math.log(share / b)),
    )[0];
    if (likely === undefined) {
      const about = figure(nominalMm, unit, sign);
      return {
        question: `${said}? About ${about} is expected here. Measure again, or confirm it.`,
        meant: null,
      };
    }
    const other = likely === 25.4 ? 'mm' : likely === 1 / 25.4 ? 'in' : unit;
    const meant = figure(mm / likely, other, sign);
    return { question: `${said}? Did you mean ${meant}?`, meant };
  }

  globalThis.coverwrightLength = { readLength, meantLength, doubtLength };
})();
