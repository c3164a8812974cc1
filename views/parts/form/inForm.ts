import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** The form that fields stand in, where a page has several: their ids begin with it. */
export const InForm = createContext('f');

/** How ids are made of names in this form, so that an error summary leads to its own field. Dotted paths are kept readable. */
export function useFieldIds(): (name: string) => string {
  const form = useContext(InForm);
  return (name) => `${form}-${name.replace(/[^A-Za-z0-9_-]+/g, '-')}`;
}
