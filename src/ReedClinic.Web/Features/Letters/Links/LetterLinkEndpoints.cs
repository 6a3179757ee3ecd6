using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Features.TeachingNotes;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Letters.Links;

/// <summary>What the page of a private link gives besides its words: the letter as a file, and what it plays. Nobody is asked who they are.</summary>
public static class LetterLinkEndpoints
{
    /// <summary>Where private links lead.</summary>
    public const string Path = "/read";

    /// <summary>Maps the addresses.</summary>
    /// <param name="app">The application.</param>
    public static void MapLetterLinks(this WebApplication app)
    {
        var links = app.MapGroup(Path + "/{Secret}").AllowAnonymous().WithMetadata(new SecretAddressAttribute(), new SandboxedFile());
        links.MapGet("/file", FileAsync);
        links.MapGet("/pictures/{Picture}", PictureAsync).WithMetadata(new SkipStatusCodePagesAttribute());
        links.MapGet("/recordings/{id:guid}", RecordingAsync).WithMetadata(new SkipStatusCodePagesAttribute());
    }

    /// <summary>The page that a link leads to.</summary>
    /// <param name="secret">The link's secret.</param>
    public static string Page(string secret) => $"{Path}/{secret}";

    /// <summary>The letter of a link as a file.</summary>
    /// <param name="secret">The link's secret.</param>
    public static string File(string secret) => $"{Path}/{secret}/file";

    /// <summary>Where the letter of a link has its sounds.</summary>
    /// <param name="secret">The link's secret.</param>
    public static string Recordings(string secret) => $"{Path}/{secret}/recordings";

    /// <summary>Where the letter of a link has its pictures, up to their keys.</summary>
    /// <param name="secret">The link's secret.</param>
    public static string Pictures(string secret) => $"{Path}/{secret}/pictures/";

    // The page says how to go on with a link that opens nothing any more.
    private static async Task<IResult> FileAsync(string secret, string? paper, HttpContext http, LetterLinkBook links, TimeProvider time) =>
        await links.ReadAsync(secret, http.RequestAborted).ConfigureAwait(false) is { Sent: var sent }
            ? LetterFileEndpoint.Letter(sent, paper, time)
            : Results.LocalRedirect(Page(Uri.EscapeDataString(secret)));

    private static async Task<IResult> PictureAsync(string secret, string picture, HttpContext http, LetterLinkBook links) =>
        NotePictureEndpoints.Answer(http, (await links.ReadAsync(secret, http.RequestAborted).ConfigureAwait(false))?.Sent.Pictures.FirstOrDefault(shown => shown.Key == picture));

    private static async Task<IResult> RecordingAsync(string secret, Guid id, HttpContext http, LetterLinkBook links)
    {
        if (await links.OpenAsync(secret, new RecordingId(id), http.RequestAborted).ConfigureAwait(false) is not { } file)
        {
            return Results.NotFound();
        }

        http.Response.Headers.ContentDisposition = new ContentDispositionHeaderValue("inline") { FileName = file.View.FileName }.ToString();
        return Results.File(file.Path, file.View.Type.ContentType(), enableRangeProcessing: true, entityTag: new EntityTagHeaderValue($"\"{file.Sha256}\""));
    }
}
