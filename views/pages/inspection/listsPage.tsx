import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ListTable } from '../../parts/listTable.tsx';

export interface ListsProps {
  readonly frame: Frame;
  readonly lists: readonly {
    readonly id: string;
    readonly name: string;
    readonly retired: boolean;
    readonly items: number;
    /** The cover types it is for. */
    readonly isFor: string;
  }[];
}

/** The shop's inspection lists, each for some cover types. */
export function ListsPage({ frame, lists }: ListsProps) {
  return (
    <Layout title="Inspection lists" here="catalogue" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>Inspection lists</h1>
      <p class="hint">
        What the shop looks at and measures on a cover’s hard parts, against its own figures. A job of these
        cover types asks for every item.
      </p>
      {lists.length === 0 ? (
        <EmptyState title="No inspection list yet">
          Add one: hub, crank pilot, pads, welds, end play, stud torque test, whatever you check.
        </EmptyState>
      ) : (
        <ListTable
          caption="Inspection lists"
          columns={[{ label: 'Name' }, { label: 'Cover types' }, { label: 'Items' }]}
          rows={lists.map(({ id, name, retired, items, isFor }) => ({
            href: `/inspection/${encodeURIComponent(id)}`,
            name,
            ...(retired && { state: 'retired' }),
            cells: [isFor, items],
          }))}
        />
      )}
      <div class="actions">
        {may(frame, 'keeper') && (
          <a class="button first" href="/inspection/new" id="add-list">
            Add an inspection list
          </a>
        )}
        <a class="button" href="/catalogue">
          Catalog
        </a>
      </div>
    </Layout>
  );
}
