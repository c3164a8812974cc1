// A CSV file is read on the tablet and put into the box, where it can be looked at before it is sent.

const file = document.getElementById('paste-file');
const box = document.getElementById('f-text');
const field = document.getElementById('paste-file-field');

if (file instanceof HTMLInputElement && box instanceof HTMLTextAreaElement && field !== null) {
  field.hidden = false;
  file.addEventListener('change', async () => {
    const chosen = file.files?.[0];
    if (chosen) box.value = await chosen.text();
  });
}
