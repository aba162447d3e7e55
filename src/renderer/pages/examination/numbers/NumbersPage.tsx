import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import { dayHere, dayInWords } from '../../../../words/dates.ts';
import { NUMBER_GROUPS, numberInWords } from '../../../../words/modelNumbers.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { basisOf } from './basis.ts';
import { ChangeNumbersDialog } from './ChangeNumbersDialog.tsx';
import style from './NumbersPage.module.css';

/** Every number of the evidence model with what it rests on, and every change of them. */
export function NumbersPage(): ReactElement {
  const answer = useAnswer('GET /api/evidence-model', {});
  const [changing, setChanging] = useState<string | null>(null);
  const page = answer.data;
  return (
    <>
      <PageHead
        title="Numbers of the evidence model"
        above={<Link to="/examination">Examination</Link>}
        below="No controlled study of error rates is known. What stands here is judgment unless it names a source; your own outcome log may know better."
      />
      {answer.error && <FailureNotice error={answer.error} action={<Button onClick={() => void answer.refetch()}>Ask again</Button>} />}
      {page && (
        <>
          <p className={style['version']}>
            Model {page.version}
            {page.revision === 0 ? ', as shipped. ' : `, changed ${page.revision === 1 ? 'once' : `${page.revision} times`}. `}
            Earlier determinations keep the version they were signed with.
          </p>
          {NUMBER_GROUPS.map(({ title, note, numbers }) => (
            <section key={title} className={style['group']} aria-labelledby={idOf(title)}>
              <header className={style['head']}>
                <div>
                  <h2 id={idOf(title)}>{title}</h2>
                  <p className={style['soft']}>{note}</p>
                </div>
                <Button icon="edit" onClick={() => setChanging(title)}>
                  Change<span className="spoken-only">: {title}</span>
                </Button>
              </header>
              <ul className={style['numbers']}>
                {numbers.map(([id, name]) => {
                  const number = page.numbers.find((one) => one.id === id);
                  return (
                    number && (
                      <li key={id}>
                        <span>{name}</span>
                        <span className={`figures ${style['value']}`}>{number.value}</span>
                        <span className={style['soft']}>{basisOf(number)}</span>
                      </li>
                    )
                  );
                })}
              </ul>
            </section>
          ))}
          <section className={style['group']} aria-labelledby="changes">
            <h2 id="changes">Changes on record</h2>
            {page.changes.length === 0 ? (
              <p className={style['soft']}>None: all numbers are as shipped.</p>
            ) : (
              <ol className={style['changes']}>
                {page.changes.map(({ revision, at, by, note, adjustments }) => (
                  <li key={revision}>
                    <strong>
                      {dayInWords(dayHere(at))}, {by}
                    </strong>
                    <span>{note}</span>
                    <span className={style['soft']}>
                      {Object.keys(adjustments).length === 0
                        ? 'All as shipped again.'
                        : Object.entries(adjustments)
                            .map(([id, value]) => `${numberInWords(id)} ${value}`)
                            .join('; ')}
                    </span>
                  </li>
                ))}
              </ol>
            )}
          </section>
          {changing !== null && <ChangeNumbersDialog title={changing} page={page} onClose={() => setChanging(null)} />}
        </>
      )}
    </>
  );
}

function idOf(title: string): string {
  return `numbers-${title.replace(/\W+/g, '-').toLowerCase()}`;
}
