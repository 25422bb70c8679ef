/** Text chunks in a PNG file, ISO/IEC 15948. */

const HEADER = 8 + 25; // bytes: the signature and the first chunk

/** Check sum of a chunk, its annex D. @param {Uint8Array} bytes */
function check(bytes) {
  let crc = -1;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ~crc;
}

/** One iTXt chunk. @param {string} keyword @param {string} text */
function textChunk(keyword, text) {
  const content = new TextEncoder().encode(`iTXt${keyword}\0\0\0\0\0${text}`);
  const chunk = new Uint8Array(content.length + 8);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, content.length - 4);
  chunk.set(content, 4);
  view.setInt32(content.length + 4, check(content));
  return chunk;
}

/** A PNG with texts behind its header. @param {Uint8Array<ArrayBuffer>} png @param {Record<string, string>} texts by keyword */
export function withTexts(png, texts) {
  const chunks = Object.entries(texts).map(([keyword, text]) => textChunk(keyword, text));
  return new Blob([png.slice(0, HEADER), ...chunks, png.slice(HEADER)], { type: "image/png" });
}
