/* What MoveFileExW, CreateFileW and FlushFileBuffers answer; run under Wine, see WineTest. */
#include <stdio.h>
#include <wchar.h>
#include <windows.h>

static void moved(const char *what, const wchar_t *from, const wchar_t *to, DWORD flags) {
  SetLastError(0);
  BOOL done = MoveFileExW(from, to, flags);
  printf("%s %d %lu\n", what, done != 0, done ? 0UL : GetLastError());
}

static void content(const char *what, const wchar_t *name) {
  FILE *file = _wfopen(name, L"r");
  int c = file ? fgetc(file) : '-';
  if (file) fclose(file);
  printf("%s %c\n", what, c);
}

static void made(const wchar_t *name, char c) {
  FILE *file = _wfopen(name, L"w");
  fputc(c, file);
  fclose(file);
}

int main(void) {
  made(L"a", 'a');
  made(L"b", 'b');
  CreateDirectoryW(L"folder", NULL);
  moved("taken", L"a", L"b", 0);
  content("a", L"a");
  content("b", L"b");
  moved("folder", L"a", L"folder", 0);
  moved("free", L"a", L"c", 0);
  moved("nosource", L"a", L"d", 0);
  moved("nofolder", L"c", L"none\\d", 0);
  moved("badname", L"c", L"\\\\?\\Z:\\tmp\\a/b", 0);
  wchar_t here[MAX_PATH], from[MAX_PATH + 8], to[MAX_PATH + 8];
  GetCurrentDirectoryW(MAX_PATH, here);
  swprintf(from, MAX_PATH + 8, L"\\\\?\\%ls\\c", here);
  swprintf(to, MAX_PATH + 8, L"\\\\?\\%ls\\\u00e9", here);
  moved("extended", from, to, 0);
  HANDLE open = CreateFileW(to, GENERIC_READ, FILE_SHARE_READ, NULL, OPEN_EXISTING, 0, NULL);
  moved("heldopen", to, L"e", 0);
  CloseHandle(open);
  open = CreateFileW(to, GENERIC_READ, FILE_SHARE_READ | FILE_SHARE_DELETE, NULL, OPEN_EXISTING, 0, NULL);
  moved("shared", to, L"e", 0);
  CloseHandle(open);
  HANDLE folder = CreateFileW(here, 0x40000000, 7, NULL, 3, 0x02000000, NULL);
  printf("flush %d\n", folder != INVALID_HANDLE_VALUE && FlushFileBuffers(folder));
  CloseHandle(folder);
  printf("constants %x %d %d %x\n", GENERIC_WRITE, FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE,
         OPEN_EXISTING, FILE_FLAG_BACKUP_SEMANTICS);
  printf("awake %x\n", ES_CONTINUOUS | ES_SYSTEM_REQUIRED | ES_DISPLAY_REQUIRED);
  printf("errors %d %d %d %d %d %d %d %d %d %d %d %d %d\n", ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND,
         ERROR_ACCESS_DENIED, ERROR_NOT_SAME_DEVICE, ERROR_WRITE_PROTECT, ERROR_SHARING_VIOLATION,
         ERROR_LOCK_VIOLATION, ERROR_HANDLE_DISK_FULL, ERROR_NOT_SUPPORTED, ERROR_FILE_EXISTS,
         ERROR_DISK_FULL, ERROR_INVALID_NAME, ERROR_ALREADY_EXISTS);
  printf("more %d %d %d %d %d %d %d %d %d %d %d\n", ERROR_INVALID_FUNCTION, ERROR_NOT_READY, ERROR_CRC,
         ERROR_SECTOR_NOT_FOUND, ERROR_GEN_FAILURE, ERROR_IO_DEVICE, ERROR_FILENAME_EXCED_RANGE,
         ERROR_BAD_NETPATH, ERROR_UNEXP_NET_ERR, ERROR_NETNAME_DELETED, ERROR_BAD_NET_NAME);
  return 0;
}
