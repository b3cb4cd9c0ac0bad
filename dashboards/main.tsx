/** Starts the page: draws it, then keeps the live link for as long as it lives. */
import { render } from 'preact';
import { App } from './app.tsx';
import { beginKeeping } from './state/kept.ts';
import { keepLink } from './state/link.ts';
import { loadBoard, takeEvent } from './state/load.ts';
import { showGround, speakChosen } from './state/preferences.ts';
import { findWho } from './state/session.ts';
import { readySound } from './state/sound.ts';
import { keepWorker } from './state/worker.ts';
import './style/tokens.css';
import './style/base.css';
import './style/parts.css';
import './style/drawings.css';
import './style/views.css';
import './style/sheets.css';
import './style/people.css';
import './style/print.css';

showGround();
await speakChosen();
readySound();
const page = document.getElementById('page');
if (page === null) throw new Error('the shell has no place for the page');
render(<App />, page);
beginKeeping();
await findWho();
void keepLink({ load: loadBoard, take: takeEvent });
keepWorker();
