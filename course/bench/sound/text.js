/** The address from which a worklet or worker is loaded: from a USB stick nothing but a data: address serves. */

// The bundler puts the text of `threads.js` here.
/** @type {string} */
const text = THREADS_TEXT;

export const threadsAddress = () => `data:text/javascript;charset=utf-8,${encodeURIComponent(text)}`;
