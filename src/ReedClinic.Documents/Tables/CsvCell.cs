using System.Globalization;

namespace ReedClinic.Documents.Tables;

/// <summary>One cell: text, which is never taken for a formula, or a number, which stays one.</summary>
public readonly record struct CsvCell
{
    private CsvCell(string? written, bool isNumber) => (Written, IsNumber) = (written, isNumber);

    /// <summary>What stands in the cell.</summary>
    public string? Written { get; }

    /// <summary>Whether it is a number of ours, and so may begin with a minus.</summary>
    public bool IsNumber { get; }

    /// <summary>Text that somebody may have typed.</summary>
    /// <param name="text">The text, or nothing.</param>
    public static CsvCell Text(string? text) => new(text, false);

    /// <summary>A number, with a point before its decimals.</summary>
    /// <param name="number">The number, or nothing.</param>
    public static CsvCell Number(decimal? number) => new(number?.ToString(CultureInfo.InvariantCulture), true);
}
