/** A role to choose, with what it may do. */
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';

export type RoleName = keyof ReturnType<typeof roles>;
const roles = () => say('role');
export const isRole = (text: string): text is RoleName => text in roles();

interface RoleProps {
  readonly name: string;
  readonly value: RoleName;
  readonly choose: (role: RoleName) => void;
}

export const RoleChoice = ({ name, value, choose }: RoleProps) => (
  <>
    <Choice
      legend={say('roleLegend')}
      name={name}
      value={value}
      choices={Object.entries(roles())}
      choose={(role) => isRole(role) && choose(role)}
    />
    <p class="hint">{say('roleWhat')[value]}</p>
  </>
);
