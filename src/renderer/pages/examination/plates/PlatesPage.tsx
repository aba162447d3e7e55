import type { ReactElement } from 'react';
import { Link } from 'wouter';
import { PageHead } from '../../../parts/PageHead.tsx';
import { VentralPlate } from '../../../parts/plates/VentralPlate.tsx';
import { Group } from '../Group.tsx';
import { FangPlate } from './FangPlate.tsx';
import { FormPlate } from './FormPlate.tsx';
import { OuterPlate } from './OuterPlate.tsx';
import { WhereToLook } from './WhereToLook.tsx';

/** All guide plates on one page, to be looked through before there is a skin. */
export function PlatesPage(): ReactElement {
  return (
    <>
      <PageHead
        title="Guide plates"
        above={<Link to="/examination">Examination</Link>}
        below="Line drawings made for this app. They show where to look and what to tell apart, not any one animal."
      />
      <Group title="Where to look">
        <WhereToLook />
      </Group>
      <Group title="Both sexes, from inside">
        <VentralPlate />
      </Group>
      <Group title="Forms of receptacles">
        <FormPlate />
      </Group>
      <Group title="The outer side, for fusillae">
        <OuterPlate />
      </Group>
      <Group title="Fangs after a molt">
        <FangPlate />
      </Group>
    </>
  );
}
