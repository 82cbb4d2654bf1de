import { render } from 'preact';
import { App } from './app/App';
import { keepForLater } from './app/offline/keeping';

const host = document.getElementById('app');
if (!host) throw new Error('index.html has no element with id "app"');
render(<App />, host);

// After everything that the first screen waits for.
if (import.meta.env.MODE === 'production') addEventListener('load', () => void keepForLater(), { once: true });
