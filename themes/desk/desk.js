// The copy button. Without script there is none, and the text can be marked and copied by hand.
for (const button of document.querySelectorAll('[data-copy]')) {
  const text = document.getElementById(button.dataset.copy);
  const told = document.querySelector(`[data-copied="${button.dataset.copy}"]`);
  button.hidden = false;
  button.addEventListener('click', async () => {
    text.select();
    try {
      await navigator.clipboard.writeText(text.value);
      told.textContent = 'Copied.';
    } catch {
      told.textContent = 'This browser does not let a page copy; the text is marked for you.';
      text.focus();
    }
  });
}
