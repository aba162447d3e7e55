import { type ReactElement, useState } from 'react';
import { CAUTIOUS_FEEDING_TABLE, FeedingTable, OTHERS_WAIT_DAYS, tooShortRows } from '../../../domain/care/feedingTable.ts';
import type { Preferences } from '../../../domain/preferences.ts';
import { listed } from '../../../words/counts.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { waitInWords } from './holdWords.ts';
import { WaitRows } from './WaitRows.tsx';
import { WaitsDifference } from './WaitsDifference.tsx';

/** The keeper's own waits after a molt, and how they differ from the cautious ones. */
export function WaitsDialog({ onClose }: { onClose: () => void }): ReactElement {
  const { data: preferences, error } = useAnswer('GET /api/preferences', {});
  if (preferences) return <WaitsForm preferences={preferences} onClose={onClose} />;
  return (
    <Dialog wide title="Waits after a molt" onClose={onClose}>
      {error && <FailureNotice error={error} />}
    </Dialog>
  );
}

function WaitsForm({ preferences, onClose }: { preferences: Preferences; onClose: () => void }): ReactElement {
  const [rows, setRows] = useState<FeedingTable>(preferences.feedingTable ?? CAUTIOUS_FEEDING_TABLE);
  const change = useChange('PUT /api/preferences');
  const checked = FeedingTable.safeParse(rows);
  const none = rows.some(({ wait }) => wait.count === 0);
  const tooShort = checked.success ? tooShortRows(checked.data) : [];
  const save = () => {
    if (!checked.success || none) return;
    const cautious = JSON.stringify(checked.data) === JSON.stringify(CAUTIOUS_FEEDING_TABLE);
    change.mutate({ body: { ...preferences, feedingTable: cautious ? null : checked.data } }, { onSuccess: onClose });
  };
  return (
    <Dialog
      wide
      title="Waits after a molt"
      onClose={onClose}
      foot={
        <>
          <Button onClick={() => setRows(CAUTIOUS_FEEDING_TABLE)}>Back to the cautious waits</Button>
          <Button kind="primary" disabled={!checked.success || none} busy={change.isPending} onClick={save}>
            Save
          </Button>
        </>
      }
    >
      <p>
        By the leg span after the molt. No prey before the wait is over and the fangs are black. The cautious waits are a careful keeper's
        custom, without a source; others wait {OTHERS_WAIT_DAYS.from} to {OTHERS_WAIT_DAYS.to} days with adults.
      </p>
      <WaitRows rows={rows} onChange={setRows} />
      {none && (
        <Notice tone="refusal" title="A wait of 0 is no wait">
          Soft fangs break on prey, and an animal with broken fangs usually starves. Give each row at least 1 day; more is safer.
        </Notice>
      )}
      {!none && tooShort.length > 0 && (
        <Notice tone="warning" title="Shorter than anybody’s custom">
          {listed(tooShort.map(({ wait }) => waitInWords(wait)))}: other keepers wait at least 2 days with the smallest animals and{' '}
          {OTHERS_WAIT_DAYS.from} with adults. Soft fangs break on prey.
        </Notice>
      )}
      {checked.success ? (
        <WaitsDifference own={checked.data} />
      ) : (
        <Notice tone="warning" title="Not yet a table">
          Each row must begin at a longer span than the one before, with a wait of 1 to 366.
        </Notice>
      )}
      {change.error && <FailureNotice error={change.error} />}
    </Dialog>
  );
}
