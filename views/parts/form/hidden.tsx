/** What a form sends along unseen; what is empty is left out. */
export function Hidden({ fields }: { fields: Readonly<Record<string, string | null | undefined>> }) {
  return (
    <>
      {Object.entries(fields).map(
        ([name, value]) => value != null && value !== '' && <input type="hidden" name={name} value={value} />,
      )}
    </>
  );
}
