package org.framewright.ui.settings;

import java.util.Optional;

/**
 * A setting as it is kept.
 *
 * @param value what holds
 * @param fault why it is not what the file says; empty where it is
 */
public record Kept<T>(T value, Optional<SettingFault> fault) {}
