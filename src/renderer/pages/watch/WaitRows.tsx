import type { ReactElement } from 'react';
import type { FeedingRow, FeedingTable } from '../../../domain/care/feedingTable.ts';
import { Button } from '../../parts/Button.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import style from './WaitRows.module.css';

interface Props {
  rows: FeedingTable;
  onChange: (rows: FeedingTable) => void;
}

const MOST_ROWS = 12;

/** The table of waits, row by row. The first row always begins at nothing. */
export function WaitRows({ rows, onChange }: Props): ReactElement {
  const put = (place: number, part: Partial<FeedingRow>) =>
    onChange(rows.map((row, index) => (index === place ? { ...row, ...part } : row)));
  const add = () => {
    const last = rows.at(-1);
    if (last) onChange([...rows, { ...last, fromMm: last.fromMm + 25.4, fromIncluded: true }]);
  };
  return (
    <>
      <table className={style['rows']}>
        <thead>
          <tr>
            <th scope="col">From leg span, mm</th>
            <th scope="col">Exactly this span</th>
            <th scope="col">Wait</th>
            <th scope="col">
              <span className="spoken-only">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, place) => (
            // A row is its place: two rows may be alike while they are written.
            <tr key={String(place)}>
              <td>
                {place === 0 ? (
                  '0'
                ) : (
                  <input
                    type="number"
                    min="0.1"
                    max="1000"
                    step="0.1"
                    aria-label={`Row ${place + 1}, from leg span in mm`}
                    value={Number.isNaN(row.fromMm) ? '' : row.fromMm}
                    onChange={(event) => put(place, { fromMm: event.target.valueAsNumber })}
                  />
                )}
              </td>
              <td>
                {place > 0 && (
                  <select
                    aria-label={`Row ${place + 1}, exactly this span`}
                    value={row.fromIncluded ? 'here' : 'before'}
                    onChange={(event) => put(place, { fromIncluded: event.target.value === 'here' })}
                  >
                    <option value="here">belongs here</option>
                    <option value="before">belongs to the row before</option>
                  </select>
                )}
              </td>
              <td>
                <div className={style['wait']}>
                  <input
                    type="number"
                    min="1"
                    max="366"
                    aria-label={`Row ${place + 1}, wait`}
                    value={Number.isNaN(row.wait.count) ? '' : row.wait.count}
                    onChange={(event) => put(place, { wait: { ...row.wait, count: event.target.valueAsNumber } })}
                  />
                  <select
                    aria-label={`Row ${place + 1}, unit of the wait`}
                    value={row.wait.unit}
                    onChange={(event) => put(place, { wait: { ...row.wait, unit: event.target.value === 'months' ? 'months' : 'days' } })}
                  >
                    <option value="days">days</option>
                    <option value="months">calendar months</option>
                  </select>
                </div>
              </td>
              <td>
                {place > 0 && (
                  <IconButton
                    icon="remove"
                    label={`Remove row ${place + 1}`}
                    onClick={() => onChange(rows.filter((_, index) => index !== place))}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length < MOST_ROWS && (
        <Button className={style['add']} icon="add" onClick={add}>
          Add a row
        </Button>
      )}
    </>
  );
}
