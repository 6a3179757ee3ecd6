// Puts a field into the passage at the cursor, as if it were typed: the browser's own undo takes it back.
for (const button of document.querySelectorAll('[data-put-field]')) {
  button.addEventListener('click', () => {
    const field = document.getElementById(button.dataset.into);
    field.focus();
    if (!document.execCommand('insertText', false, button.dataset.putField)) {
      field.setRangeText(button.dataset.putField, field.selectionStart, field.selectionEnd, 'end');
    }
  });
}
document.documentElement.dataset.noteFields = 'ready';
