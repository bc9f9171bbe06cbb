/** Records of games, matches and sessions: their rules, their text, and the open SGF standard. */
package org.pipwright.engine.record;
