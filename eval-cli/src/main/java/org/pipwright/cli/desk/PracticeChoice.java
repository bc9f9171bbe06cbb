package org.pipwright.cli.desk;

import java.util.Map;

/**
 * What can be practised.
 *
 * @param choices words for people by words for forms
 * @param error why nothing could be begun; may be empty
 */
public record PracticeChoice(Map<String, String> choices, String error) {}
