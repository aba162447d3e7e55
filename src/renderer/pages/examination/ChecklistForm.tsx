import type { ReactElement } from 'react';
import type { Estimate } from '../../../domain/measuring/quantity.ts';
import { Answer, type Checklist, StripAnswer } from '../../../domain/sexing/determination.ts';
import type { GenusFlags } from '../../../domain/sexing/genus/profile.ts';
import { CONDITION_LABELS, LIGHT_LABELS, MAGNIFICATION_LABELS, QUESTIONS, type Question, SIDE_LABELS } from '../../../words/checklist.ts';
import { genusWarnings } from '../../../words/genus.ts';
import { choicesOf, GRADE_LABELS } from '../../../words/labels.ts';
import { Field } from '../../parts/Field.tsx';
import { Notice } from '../../parts/Notice.tsx';
import style from './ChecklistForm.module.css';
import { Group } from './Group.tsx';
import { LegSpanField } from './LegSpanField.tsx';
import { RadioRow } from './RadioRow.tsx';
import { VentralPlate } from './VentralPlate.tsx';

interface Props {
  checklist: Checklist;
  genus: GenusFlags;
  /** Leg span as the Bench measured it. */
  measuredSpan: Estimate | null;
  onAnswer: (answers: Partial<Checklist>) => void;
}

const CLOSED_BY_GRADE_D = 'Closed: with grade D there is no strip to read.';

/** The guided reading of one skin, from whose it is to who else has read it. */
export function ChecklistForm({ checklist, genus, measuredSpan, onAnswer }: Props): ReactElement {
  const ask = (name: Question) => <QuestionRow name={name} checklist={checklist} onAnswer={onAnswer} />;
  return (
    <>
      <Group title="Whose skin" note="The skin shows the instar that has ended. The animal that left it is already larger.">
        {ask('skinMatchesAnimal')}
        {checklist.skinMatchesAnimal === 'no' && (
          <Notice tone="warning" title="Then it says nothing about this animal.">
            File the skin under the animal it came from, and read it there.
          </Notice>
        )}
        <LegSpanField legSpanMm={checklist.legSpanMm} measured={measuredSpan} onChange={(legSpanMm) => onAnswer({ legSpanMm })} />
      </Group>
      <Group title="How readable">
        <RadioRow
          legend="What grade is the genital strip?"
          explained="The strip lies between the front book lungs. A needs both of them intact, and photos in two lights."
          value={checklist.grade}
          options={choicesOf(GRADE_LABELS)}
          onChange={(grade) => onAnswer(grade === 'D' ? { grade, ...withoutStrip(checklist) } : { grade })}
        />
        {ask('fourBookLungsFound')}
      </Group>
      <Group
        title="How it was looked at"
        note="Best wet and dry, and with light through the skin and from the side: wet, a flap can lie so flat that it does not show."
      >
        <RadioRow beside legend="Side" value={checklist.view} options={choicesOf(SIDE_LABELS)} onChange={(view) => onAnswer({ view })} />
        <RadioRow
          beside
          legend="State"
          value={checklist.condition}
          options={choicesOf(CONDITION_LABELS)}
          onChange={(condition) => onAnswer({ condition })}
        />
        <RadioRow
          beside
          legend="Light"
          value={checklist.light}
          options={choicesOf(LIGHT_LABELS)}
          onChange={(light) => onAnswer({ light })}
        />
        <RadioRow
          beside
          legend="Enlarged by"
          value={checklist.magnification}
          options={choicesOf(MAGNIFICATION_LABELS)}
          onChange={(magnification) => onAnswer({ magnification })}
        />
      </Group>
      <Group
        title="What was seen"
        note="“Readable and absent” is evidence. If the place could not be read, or nobody looked, say that instead: it weighs nothing, either way."
      >
        <VentralPlate />
        {genusWarnings(genus).map((warning) => (
          <Notice key={warning} tone="warning">
            {warning}
          </Notice>
        ))}
        {StripAnswer.options.map((name) => (
          <QuestionRow key={name} name={name} checklist={checklist} onAnswer={onAnswer} />
        ))}
      </Group>
      <Group title="On the animal itself" note="Not on this skin.">
        {ask('palpalBulbsOnAnimal')}
        {ask('eggSacLaid')}
      </Group>
      <Group title="Second reader">
        <div className={style['name']}>
          <Field label="Name of the second reader">
            {(control) => (
              <input
                {...control}
                maxLength={200}
                value={checklist.secondReader ?? ''}
                onChange={(event) => onAnswer({ secondReader: event.target.value === '' ? null : event.target.value })}
              />
            )}
          </Field>
        </div>
        {ask('secondReaderAgrees')}
      </Group>
    </>
  );
}

function QuestionRow({ name, checklist, onAnswer }: { name: Question } & Pick<Props, 'checklist' | 'onAnswer'>): ReactElement {
  const { question, explained, answers } = QUESTIONS[name];
  const needsStrip = StripAnswer.options.some((answer) => answer === name);
  return (
    <RadioRow
      legend={question}
      explained={explained}
      value={checklist[name]}
      options={Answer.options.map((value) => ({ value, label: answers[value] }))}
      onChange={(answer) => onAnswer({ [name]: answer })}
      closed={needsStrip && checklist.grade === 'D' ? CLOSED_BY_GRADE_D : undefined}
    />
  );
}

/** What was said about a strip that turns out not to be readable becomes "cannot tell". */
function withoutStrip(checklist: Checklist): Partial<Checklist> {
  return Object.fromEntries(StripAnswer.options.map((name) => [name, checklist[name] === 'not-looked' ? 'not-looked' : 'cannot-tell']));
}
