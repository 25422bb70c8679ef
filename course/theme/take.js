/* Takes a picture away as PNG: the drawing in the page in its light colours, with its caption, licence and settings inside. */
(function () {
  "use strict";

  var WIDTH = 1600;
  var letters = new URL("type/letters.js", document.currentScript.src).href;

  /* The first rule of the page's own style sheet names the light colours. */
  function lightColours() {
    var light = {};
    document.styleSheets[0].cssRules[0].cssText.replace(/--([\w-]+):\s*([^;}]+)/g, function (_, name, colour) {
      light[name] = colour.trim();
    });
    light.slip = light.paper = "#ffffff";
    return light;
  }

  function withLetters(go) {
    if (window.courseLetters) return go();
    var script = document.createElement("script");
    script.src = letters;
    script.onload = script.onerror = go;
    document.head.appendChild(script);
  }

  function standingAlone(svg) {
    var colours = lightColours(), copy = svg.cloneNode(true), view = svg.viewBox.baseVal;
    copy.querySelectorAll(".heard-now, .heard-pitches").forEach(function (part) { part.remove(); });
    copy.setAttribute("width", WIDTH);
    copy.setAttribute("height", Math.round(WIDTH * view.height / view.width));
    var style = document.createElementNS("http://www.w3.org/2000/svg", "style");
    style.textContent = (window.courseLetters || "") + "svg{color:" + colours.ink + ";font-family:'Alegreya Sans',sans-serif}";
    copy.insertBefore(style, copy.firstChild);
    return new XMLSerializer().serializeToString(copy).replace(/var\(--([\w-]+)\)/g, function (_, name) { return colours[name]; });
  }

  function check(bytes) {
    var crc = -1;
    bytes.forEach(function (byte) {
      crc ^= byte;
      for (var bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    });
    return ~crc;
  }

  /* One iTXt chunk of ISO/IEC 15948. */
  function textChunk(keyword, text) {
    var content = new TextEncoder().encode("iTXt" + keyword + "\0\0\0\0\0" + text);
    var chunk = new Uint8Array(content.length + 8), view = new DataView(chunk.buffer);
    view.setUint32(0, content.length - 4);
    chunk.set(content, 4);
    view.setInt32(content.length + 4, check(content));
    return chunk;
  }

  function labelled(png, figure) {
    var header = 8 + 25, box = figure.querySelector(".take"), parts = [png.slice(0, header)];
    function said(where) {
      return Array.from(figure.querySelectorAll(where), function (part) { return part.innerText.trim(); }).join("; ");
    }
    var caption = figure.querySelector("figcaption").cloneNode(true);
    caption.querySelectorAll(".hold, .katex-html").forEach(function (part) { part.remove(); });
    var labels = {
      Title: box.dataset.title, Description: caption.textContent.trim(), Author: "Crystal to Reaction",
      Copyright: said(".take-licence"), Source: said(".take-command"), Comment: "Settings: " + (said(".take li code") || "nothing to set")
    };
    Object.keys(labels).forEach(function (keyword) { parts.push(textChunk(keyword, labels[keyword])); });
    return new Blob(parts.concat(png.slice(header)), { type: "image/png" });
  }

  function save(blob, name) {
    var link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = name;
    link.click();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
  }

  function drawn(address, ready) {
    var image = new Image(), canvas = document.createElement("canvas");
    image.src = address;
    image.decode().then(function () {
      canvas.width = WIDTH;
      canvas.height = image.height;
      var pen = canvas.getContext("2d");
      pen.fillStyle = "#ffffff";
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.drawImage(image, 0, 0);
      ready(canvas);
    });
  }

  /* A browser may draw before it has read the letters: draw again until twice running the same came out. */
  function take(figure, name) {
    var address = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(standingAlone(figure.querySelector("svg")));
    var last = "", tries = 0;
    (function again() {
      drawn(address, function (canvas) {
        var now = canvas.toDataURL();
        if (++tries < 3 || (now !== last && tries < 12)) {
          last = now;
          setTimeout(again, 120);
          return;
        }
        canvas.toBlob(function (blob) {
          blob.arrayBuffer().then(function (png) { save(labelled(new Uint8Array(png), figure), name); });
        });
      });
    })();
  }

  document.querySelectorAll(".take-png").forEach(function (button) {
    var figure = button.closest("figure"), name = figure.querySelector('.take a[href$=".svg"]').getAttribute("href");
    button.hidden = false;
    button.addEventListener("click", function () {
      withLetters(function () { take(figure, name.replace(/^.*\//, "").replace(/\.svg$/, ".png")); });
    });
  });
})();
