/* Stands for java.exe under Wine: prints its arguments, a line each. See WineTest. */
#include <stdio.h>

int main(int count, char **words) {
  for (int i = 1; i < count; i++) {
    printf("%s\n", words[i]);
  }
  return 7;
}
