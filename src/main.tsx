import { createRoot } from 'react-dom/client';
import { App, fetchPlace } from './app/index.ts';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');
await fetchPlace(location.hash);
createRoot(root).render(<App />);
