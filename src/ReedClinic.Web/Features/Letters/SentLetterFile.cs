using System.Globalization;
using ReedClinic.Data.Letters;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Web.Features.Letters;

/// <summary>A letter that was sent, as a file: the same at its own address, by a private link, with a mail and in the copy of one's records.</summary>
internal static class SentLetterFile
{
    /// <summary>What kind of file it is (RFC 8118).</summary>
    public const string Type = "application/pdf";

    /// <summary>What it is called. What was sent before a correction doesn't take the name of what was sent last.</summary>
    /// <param name="sent">The letter.</param>
    /// <param name="size">The paper, where there may be one on each.</param>
    public static string Name(SentLetter sent, PaperSize? size = null) => sent.ReplacedAt is null
        ? Name(sent.Letter.Code, size)
        : Name(string.Create(CultureInfo.InvariantCulture, $"{sent.Letter.Code}-sent-{sent.Ordinal}"), size);

    /// <summary>The same of a letter that isn’t sent: two on different papers never have one name.</summary>
    /// <param name="which">Its code.</param>
    /// <param name="size">The paper, where there may be one on each.</param>
    public static string Name(string which, PaperSize? size) => $"letter-{which}{(size == PaperSize.UsLetter ? "-us-letter" : "")}.pdf";

    /// <summary>What stands in it, on the paper that is usual where the student lives.</summary>
    /// <param name="sent">The letter.</param>
    /// <param name="zone">The studio's zone, for its days.</param>
    public static byte[] Pdf(SentLetter sent, TimeZoneInfo zone) => Pdf(sent, PaperByCountry.Of(sent.Country), zone);

    /// <summary>The same on a paper that was asked for.</summary>
    /// <param name="sent">The letter.</param>
    /// <param name="size">The paper.</param>
    /// <param name="zone">The studio's zone.</param>
    public static byte[] Pdf(SentLetter sent, PaperSize size, TimeZoneInfo zone) =>
        LetterPrint.Pdf(sent.Letter, Day(sent.SentAt, zone), size, Among(sent, zone), PictureFiles.Read(sent.Pictures));

    /// <summary>Where it stands among the letters about its batch.</summary>
    /// <param name="sent">The letter.</param>
    /// <param name="zone">The studio's zone.</param>
    public static LetterAmong Among(SentLetter sent, TimeZoneInfo zone) => new(
        sent.Replaces is { } before ? Day(before, zone) : null, sent.WhatChanged, sent.ReplacedAt is { } later ? Day(later, zone) : null);

    private static DateTimeOffset Day(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone);
}
