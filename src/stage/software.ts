const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** Whether pictures are computed without a graphics card here: smoothing edges then costs more than it gives. */
export function drawsInSoftware(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2');
  if (!gl) return false;
  let name = String(gl.getParameter(gl.RENDERER));
  // Some browsers hide the name behind an extension, others warn about its use.
  const debug = name.startsWith('WebKit') ? gl.getExtension('WEBGL_debug_renderer_info') : null;
  if (debug) name = String(gl.getParameter(debug.UNMASKED_RENDERER_WEBGL));
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return SOFTWARE.test(name);
}
