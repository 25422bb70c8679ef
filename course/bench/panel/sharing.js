/** The setting as a link and as a line for a lesson, and in the address bar. */

/** @param {HTMLElement} root @returns {(setting: string) => void} */
export function sharing(root) {
  const link = root.querySelector('.setting-link'), line = root.querySelector('.setting-line');
  const copied = root.querySelector('.copied');
  const texts = { link: () => link.href, line: () => line.value };
  root.querySelectorAll('[data-copy]').forEach(button => button.addEventListener('click', async () => {
    const done = await copy(texts[button.dataset.copy]());
    copied.textContent = done ? 'Copied.' : 'This browser does not let a page copy: mark the text and copy it by hand.';
  }));
  return setting => {
    link.href = `#${setting}`;
    line.value = `{{ bench("${setting}") }}`;
    if (location.hash !== `#${setting}`) replaceAddress(`#${setting}`);
  };
}

async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

function replaceAddress(address) {
  try { history.replaceState(null, '', address); } catch { /* a browser that is asked too often says no */ }
}
