/**
 * Excel's end of the JSON bridge, as a script for the page: it must be there before office.js. Message numbers and
 * shapes are those of Microsoft's custom functions runtime (1000 a call, 1001 a cancellation; results in batches).
 */
export const BRIDGE_SCRIPT = `
globalThis.violations = [];
addEventListener("securitypolicyviolation", (event) => violations.push(event.effectiveDirective + " " + event.blockedURI));
globalThis.excelHost = (() => {
  const waiting = new Map();
  const answer = (id, body) => bridge.onMessageFromHost(
    JSON.stringify({ id, type: 2, flags: 0, message: { statusCode: 200, headers: {}, body: JSON.stringify(body) } }));
  const bridge = {
    sendMessageToHost(text) {
      const { id, message } = JSON.parse(text);
      const { Actions = [] } = typeof message.body === "string" ? JSON.parse(message.body) : (message.body ?? {});
      for (const { Name, ArgumentInfo } of Actions)
        if (Name === "SetInvocationArrayResults")
          for (const [call, ok, value, error] of ArgumentInfo.Arguments[0]) {
            waiting.get(call)?.({ ok, value, error });
            waiting.delete(call);
          }
      setTimeout(() => answer(id, { Results: [], TraceIds: [] }));
    },
  };
  globalThis._richApiNativeBridge = bridge;
  const send = (type, messages) => bridge.onMessageFromHost(JSON.stringify({ type: 3, message: {
    entries: messages.map((message) => ({ messageCategory: 1, messageType: type, targetId: "", message })) } }));
  return {
    /** [call, function id, values, address, flags] each; resolves when every one is answered. */
    call: (calls) => {
      const answers = calls.map(([id]) => new Promise((done) => waiting.set(id, done)));
      send(1000, calls);
      return Promise.all(answers);
    },
    cancel: (invocationId) => send(1001, [{ invocationId }]),
  };
})();`;
