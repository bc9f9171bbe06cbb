// Keys press the button that names them, unless something is being written.
addEventListener('keydown', (event) => {
  const writing = event.target.matches && event.target.matches('input, select, textarea');
  const scrolling = event.key.startsWith('Arrow') && event.target.closest?.('[role=region]');
  if (writing || scrolling || event.ctrlKey || event.metaKey || event.altKey) return;
  const button = document.querySelector(`[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
  if (button) {
    event.preventDefault();
    button.click();
  }
});
