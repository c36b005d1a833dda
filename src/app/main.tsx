import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { Desk } from './state/desk.ts';
import { firstJob } from './state/first-job.ts';
import './paper/index.css';

const desk = new Desk(await firstJob());
createRoot(document.getElementById('app')!).render(<App desk={desk} />);
