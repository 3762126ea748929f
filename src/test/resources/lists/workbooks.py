"""Makes the workbooks of list-shapes.csv with openpyxl, in the folder that is named."""
import datetime
import os
import sys

import openpyxl


def save(name, fill):
    book = openpyxl.Workbook()
    fill(book, book.active)
    book.save(os.path.join(sys.argv[1], name))


def rows(sheet, *lines):
    for line in lines:
        sheet.append(list(line))


def merged(book, sheet):
    sheet.title = "Looks"
    rows(sheet, ("Look", "Title", "View"), (1, "Coat", "Front"), (None, None, "Back"), (None, None, "Detail"), (2, "Cape", "Front"))
    sheet.merge_cells("A2:A4")
    sheet.merge_cells("B2:B4")


def merged_sizes(book, sheet):
    rows(sheet, ("Style", "Name", "Size"), ("KV-1", "Coat", "S"), (None, None, "M"), (None, None, "L"), ("KV-2", "Cape", "S"))
    sheet.merge_cells("A2:A4")
    sheet.merge_cells("B2:B4")


def merged_rack(book, sheet):
    rows(sheet, ("Look", "Title", "Rack"), (1, "Coat", "A1"), (2, "Cape", None), (3, "Dress", "B2"))
    sheet.merge_cells("C2:C3")


def hidden(book, sheet):
    rows(sheet, ("Look", "Price", "Title"), (1, 10, "Coat"), (2, 20, "Cape"), (3, 30, "Dress"), (4, 40, "Hat"))
    sheet.row_dimensions[3].hidden = True
    sheet.row_dimensions[4].hidden = True
    sheet.column_dimensions["B"].hidden = True


def dates(book, sheet):
    rows(sheet, ("Style", "Name"), ("A-1", "Coat"), (datetime.date(2026, 3, 1), "Cape"))


def formulas(book, sheet):
    rows(sheet, ("Look", "Title", "Frames"), (1, "Coat", 4), (2, "Cape", "=2*3"))


def code_formulas(book, sheet):
    rows(sheet, ("Style", "Title"), ('="KV-"&1', "Coat"), ('="KV-"&2', "Cape"))


def sheets(book, sheet):
    sheet.title = "Contacts"
    rows(sheet, ("Who", "Phone"), ("Mira", "none"))
    tops = book.create_sheet("Tops")
    rows(tops, ("Look", "Title", "Views"), (1, "Shirt", "F"), (2, "Blouse", "F"))
    bottoms = book.create_sheet("Bottoms")
    rows(bottoms, ("Look", "Title"), (11, "Trousers"))


def hidden_sheet(book, sheet):
    sheet.title = "Notes"
    rows(sheet, ("Steam well",))
    looks = book.create_sheet("Looks")
    rows(looks, ("Look", "Title"), (1, "Coat"), (2, "Cape"))
    old = book.create_sheet("Old")
    rows(old, ("Look", "Title", "Views", "Frames"), (8, "Old coat", "F", 2))
    old.sheet_state = "hidden"


def numbers(book, sheet):
    rows(sheet, ("Look", "Title", "Shoot day"), (7, "Coat", datetime.date(2026, 11, 23)), (8, "Cape", datetime.date(2026, 11, 24)))
    for row in (2, 3):
        sheet.cell(row, 1).number_format = "000"


def gtins(book, sheet):
    rows(sheet, ("EAN", "Product"), (6291041500213, "Tea"))


def errors(book, sheet):
    rows(sheet, ("Look", "Title"), (1, "Coat"), ("#REF!", "Cape"))
    sheet["A3"].data_type = "e"


for name, fill in {
    "merged.xlsx": merged,
    "merged-sizes.xlsx": merged_sizes,
    "merged-rack.xlsx": merged_rack,
    "hidden.xlsx": hidden,
    "dates.xlsx": dates,
    "formulas.xlsx": formulas,
    "code-formulas.xlsx": code_formulas,
    "sheets.xlsx": sheets,
    "hidden-sheet.xlsx": hidden_sheet,
    "numbers.xlsx": numbers,
    "gtins.xlsx": gtins,
    "errors.xlsx": errors,
}.items():
    save(name, fill)
