// Passkeys through the browser's own interface (WebAuthn). The server's options hold bytes as base64url text, and so do the answers.
const bytes = text => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), c => c.charCodeAt(0));
const text = buffer => btoa(String.fromCharCode(...new Uint8Array(buffer))).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
const known = list => (list ?? []).map(one => ({ ...one, id: bytes(one.id) }));

export const able = () => !!window.PublicKeyCredential && !!navigator.credentials;

/** Makes a passkey for the server's options and gives the answer as text. */
export async function create(options) {
  const made = await navigator.credentials.create({
    publicKey: { ...options, challenge: bytes(options.challenge), user: { ...options.user, id: bytes(options.user.id) }, excludeCredentials: known(options.excludeCredentials) },
  });
  return answer(made, {
    attestationObject: text(made.response.attestationObject),
    transports: made.response.getTransports?.() ?? [],
  });
}

/** Answers the server's challenge with a passkey the person chooses. */
export async function get(options) {
  const shown = await navigator.credentials.get({ publicKey: { ...options, challenge: bytes(options.challenge), allowCredentials: known(options.allowCredentials) } });
  return answer(shown, {
    authenticatorData: text(shown.response.authenticatorData),
    signature: text(shown.response.signature),
    userHandle: shown.response.userHandle ? text(shown.response.userHandle) : null,
  });
}

const answer = (credential, response) => JSON.stringify({
  id: credential.id,
  rawId: text(credential.rawId),
  type: credential.type,
  authenticatorAttachment: credential.authenticatorAttachment,
  clientExtensionResults: credential.getClientExtensionResults(),
  response: { clientDataJSON: text(credential.response.clientDataJSON), ...response },
});
