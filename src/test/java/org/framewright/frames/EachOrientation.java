package org.framewright.frames;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Exif Orientation, CIPA DC-008 table of tag 0x0112: 1 top left, 2 top right, 3 bottom right, 4
 * bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom: where row 0 and column 0 of
 * the stored picture are seen. A test gets the orientation, whether the picture lies, and whether
 * that corner is seen at the right and at the bottom.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ParameterizedTest
@CsvSource({
  "1,false,false,false",
  "2,false,true,false",
  "3,false,true,true",
  "4,false,false,true",
  "5,true,false,false",
  "6,true,true,false",
  "7,true,true,true",
  "8,true,false,true"
})
@interface EachOrientation {}
