import { slipNamesView } from '../../slipNamesView.ts';

export const postgres = slipNamesView(
  (column, path) => `((${column}::jsonb #>> '{${path.join(',')}}') COLLATE "C")`,
  (text) => `'${text}'::text COLLATE "C"`,
);
