/** The trained nets that come with Pipwright, by name, with their cards. */
package org.pipwright.models;
