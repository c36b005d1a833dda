const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
worker.onmessage = ({ data }) => {
  document.querySelector('output')!.textContent = data;
};
