import { render } from 'preact';
import { App } from './app/App';

const host = document.getElementById('app');
if (!host) throw new Error('index.html has no element with id "app"');
render(<App />, host);
