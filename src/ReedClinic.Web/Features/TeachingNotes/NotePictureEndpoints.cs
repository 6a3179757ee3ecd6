using Microsoft.Net.Http.Headers;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Documents.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.TeachingNotes;

/// <summary>Where the pictures of notes and letters go out. OWASP ASVS 5.0: 3.2.1, 5.4.1.</summary>
public static class NotePictureEndpoints
{
    /// <summary>Adds what notes need to the host.</summary>
    /// <param name="builder">The host.</param>
    public static void AddNotes(this WebApplicationBuilder builder) => builder.Services.AddScoped<OwnNoteKeeping>();

    /// <summary>Maps the addresses.</summary>
    /// <param name="app">The application.</param>
    public static void MapNotePictures(this WebApplication app)
    {
        app.MapGet("/notes/pictures/{Picture}", OfNoteAsync).RequireAuthorization(AccountSetup.WorksHere).WithMetadata(new SandboxedFile());
        app.MapGet(LetterPage.PictureAddress("{Code}", "{Picture}"), OfLetterAsync).RequireAuthorization().WithMetadata(new SandboxedFile());
    }

    /// <summary>Where those who work here see a picture.</summary>
    /// <param name="key">Its key.</param>
    public static string Address(string key) => $"/notes/pictures/{key}";

    /// <summary>A picture as an answer; the kind is ours, by what its content was found to be.</summary>
    /// <param name="http">The request.</param>
    /// <param name="file">The picture; null for none.</param>
    internal static IResult Answer(HttpContext http, NotePictureFile? file)
    {
        if (file is null || !File.Exists(file.Path))
        {
            return Results.NotFound();
        }

        http.Response.Headers.ContentDisposition = new ContentDispositionHeaderValue("inline") { FileName = file.FileName }.ToString();
        return Results.File(file.Path, file.Type.ContentType(), entityTag: new EntityTagHeaderValue($"\"{file.Sha256}\""));
    }

    private static async Task<IResult> OfNoteAsync(string picture, HttpContext http, ActorAccess actors, NotePictureBook pictures) =>
        Answer(http, await actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is { } actor
            ? await pictures.OpenAsync(actor, picture, http.RequestAborted).ConfigureAwait(false)
            : null);

    private static async Task<IResult> OfLetterAsync(string code, string picture, HttpContext http, ActorAccess actors, NotePictureBook pictures) =>
        Answer(http, await actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is { } actor && BatchCode.Read(code) is Outcome<BatchCode>.Done(var known)
            ? await pictures.OpenInLetterAsync(actor, known, picture, http.RequestAborted).ConfigureAwait(false)
            : null);
}
