using System.Globalization;
using ReedClinic.Data.Letters;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Letters;

/// <summary>A letter as a file to print and keep: whoever may read it may take it. And the mail about it, once more.</summary>
public static class LetterFileEndpoint
{
    /// <summary>In an address: the letter as it isn't sent yet, for those who work here.</summary>
    public const string Draft = "draft";

    /// <summary>
    /// Maps <c>GET /letters/{Code}/file?paper=&amp;sending=</c>: <c>a4</c>, <c>us-letter</c>, or by itself what is usual where the
    /// student lives; the letter as it was sent last, in an earlier sending, or as a draft.
    /// </summary>
    /// <param name="app">The application.</param>
    public static void MapLetterFiles(this WebApplication app)
    {
        app.MapGet("/letters/{Code}/file", GetAsync).RequireAuthorization().WithMetadata(new SandboxedFile());
        app.MapPost("/letters/{Code}/mail", AgainAsync).RequireAuthorization();
    }

    /// <summary>The address of a letter's file.</summary>
    /// <param name="code">The batch.</param>
    /// <param name="size">The paper.</param>
    /// <param name="sending">Which sending; null for the newest.</param>
    public static string Address(string code, PaperSize size, string? sending = null) =>
        OnPaper($"/letters/{code}/file", size) + (sending is null ? "" : "&sending=" + sending);

    /// <summary>The address of a file on one paper.</summary>
    /// <param name="file">Where it is asked for.</param>
    /// <param name="size">The paper.</param>
    public static string OnPaper(string file, PaperSize size) => $"{file}?paper={(size == PaperSize.UsLetter ? "us-letter" : "a4")}";

    /// <summary>A letter that was sent, as a file.</summary>
    /// <param name="sent">The letter.</param>
    /// <param name="paper">The paper that was asked for, if one was.</param>
    /// <param name="time">The clock, for the studio's own time.</param>
    internal static IResult Letter(SentLetter sent, string? paper, TimeProvider time) =>
        Results.File(SentLetterFile.Pdf(sent, Size(paper, sent.Country), time.LocalTimeZone), SentLetterFile.Type, SentLetterFile.Name(sent, Size(paper, sent.Country)));

    private static async Task<IResult> GetAsync(string code, string? paper, string? sending, HttpContext http, ActorAccess actors, LetterBoxBook box, LetterBook book, NotePictureBook pictures, TimeProvider time)
    {
        var ct = http.RequestAborted;
        if (await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor || BatchCode.Read(code) is not Outcome<BatchCode>.Done(var known))
        {
            return Results.NotFound();
        }

        if (await SentAsync(actor, known, sending, box, ct).ConfigureAwait(false) is { } sent)
        {
            return Letter(sent with { Pictures = await pictures.OfLetterAsync(actor, sent.Letter, ct).ConfigureAwait(false) }, paper, time);
        }

        return (sending is null or Draft ? await book.ReadAsync(actor, known, ct).ConfigureAwait(false) : null) switch
        {
            null => Results.NotFound(),
            // It went out meanwhile, or its correction was dropped: what was sent has a day of its own.
            { IsSent: true } => Results.LocalRedirect(Address(known.ToString(), Size(paper, null))),
            var view => Letter(LetterPrint.Pdf(view.Draft, time.There(time.GetUtcNow()), Size(paper, null), Among(view, time), PictureFiles.Read(await pictures.OfLetterAsync(actor, view.Draft, ct).ConfigureAwait(false))), SentLetterFile.Name(view.Draft.Code, Size(paper, null))),
        };
    }

    private static async Task<SentLetter?> SentAsync(Actor actor, BatchCode code, string? sending, LetterBoxBook box, CancellationToken ct) => sending switch
    {
        null => await box.ReadAsync(actor, code, ct).ConfigureAwait(false),
        _ when int.TryParse(sending, NumberStyles.None, CultureInfo.InvariantCulture, out var ordinal) => await box.ReadSendingAsync(actor, code, ordinal, ct).ConfigureAwait(false),
        _ => null,
    };

    private static async Task<IResult> AgainAsync(string code, IFormCollection posted, HttpContext http, ActorAccess actors, LetterMailBook mails)
    {
        if (await actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is not { } actor || BatchCode.Read(code) is not Outcome<BatchCode>.Done(var known))
        {
            return Results.NotFound();
        }

        var operation = new OperationId(Guid.TryParse(posted["Operation"], out var given) ? given : default);
        return await mails.AgainAsync(actor, known, operation, http.RequestAborted).ConfigureAwait(false) is Outcome<LetterMail>.NotFound
            ? Results.NotFound()
            : Results.LocalRedirect($"/batches/{known}/letter?done=told");
    }

    private static LetterAmong Among(LetterView view, TimeProvider time) =>
        view.IsCorrection ? new(time.There(view.SentAt!.Value), view.WhatChanged) : LetterAmong.Only;

    private static IResult Letter(byte[] pdf, string name) => Results.File(pdf, SentLetterFile.Type, name);

    private static PaperSize Size(string? paper, string? country) => paper switch
    {
        "us-letter" => PaperSize.UsLetter,
        "a4" => PaperSize.A4,
        _ => PaperByCountry.Of(country),
    };
}
