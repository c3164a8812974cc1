import { slipNamesView } from '../../slipNamesView.ts';

export const sqlite = slipNamesView(
  (column, path) => {
    const place = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`)).join('');
    return `json_extract(${column}, '$${place}')`;
  },
  (text) => `'${text}'`,
);
