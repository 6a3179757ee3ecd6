// A button that copies a text of the page. Without scripts, or where the browser doesn't let them copy, the text is there to be
// marked: one click takes all of it.
for (const button of document.querySelectorAll('[data-copy]')) {
  if (!navigator.clipboard) continue;
  button.hidden = false;
  button.addEventListener('click', async () => {
    const text = document.getElementById(button.dataset.copy);
    const said = button.parentElement.querySelector('[role=status]');
    try {
      await navigator.clipboard.writeText(text.textContent.trim());
      said.textContent = button.dataset.copied;
    } catch {
      getSelection().selectAllChildren(text);
    }
  });
}
