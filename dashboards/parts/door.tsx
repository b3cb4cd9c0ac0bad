/** What stands in the place of everything while nobody is signed in: signing in, or an invitation. */
import type { Place } from '../router.ts';
import { say } from '../text/say.ts';
import { Invitation } from '../views/invitation.tsx';
import { SignIn } from '../views/sign-in.tsx';

export const Door = ({ place }: { readonly place: Place }) => (
  <>
    <header class="door-top">
      <span class="site">{say('product')}</span>
    </header>
    <main id="content">
      {place.name === 'invitation' ? <Invitation secret={place.parts[0] ?? ''} /> : <SignIn />}
    </main>
  </>
);
