using System.Collections.Concurrent;
using System.Net;
using System.Security.Claims;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Antiforgery;
using ReedClinic.Data.Letters;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Letters;

/// <summary>Marks the page whose letters are given out as they are kept.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class KeptPageAttribute : Attribute;

/// <summary>Asks the page of a letter for its frame alone.</summary>
/// <param name="Country">Stands for where the student lives: it tells the size of paper.</param>
public sealed record LetterFrameWish(string? Country);

/// <summary>
/// What stands round a letter that was sent: head, menu, bar and foot. The page itself draws it, once for each kind of reader
/// and for nobody in particular; whose letter it is, its code and the form's token are put in for each request.
/// </summary>
public sealed partial class LetterFrames(IServiceScopeFactory scopes, IAntiforgery antiforgery)
{
    /// <summary>Stands for the batch's code while a frame is drawn.</summary>
    public const string Code = "0-CODE-0";

    /// <summary>Stands for the letter while a frame is drawn.</summary>
    public const string Letter = "<!--letter-->";

    private const string Token = "0-TOKEN-0";

    private readonly ConcurrentDictionary<FrameKind, Task<IReadOnlyList<FramePart>>> _frames = new();

    /// <summary>Gives out a letter in its frame.</summary>
    /// <param name="http">The request.</param>
    /// <param name="letter">The letter, and who asked for it.</param>
    /// <param name="code">The batch.</param>
    public async Task WriteAsync(HttpContext http, LetterAtHand letter, BatchCode code)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(letter);
        var actor = letter.Person.Actor;
        var kind = new FrameKind(actor.IsTeacher, actor.IsOwner, actor.Student is not null, actor.Guards, Lamp.Of(http.Request), PaperByCountry.Of(letter.Country));
        var drawn = _frames.GetOrAdd(kind, _ => DrawAsync(http, letter.Country));
        if (drawn.IsFaulted)
        {
            _frames.TryRemove(new(kind, drawn)); // the next request tries again
        }

        var parts = await drawn.ConfigureAwait(false);
        byte[] token = Encoding.UTF8.GetBytes(WebUtility.HtmlEncode(antiforgery.GetAndStoreTokens(http).RequestToken ?? ""));
        byte[] name = Encoding.UTF8.GetBytes(code.ToString());
        var response = http.Response;
        response.ContentType = "text/html; charset=utf-8";
        response.Headers["blazor-enhanced-nav"] = "allow"; // as every page says
        response.ContentLength = parts.Sum(part => part.Of(letter.Page, name, token).Length);
        foreach (var part in parts)
        {
            await response.BodyWriter.WriteAsync(part.Of(letter.Page, name, token), http.RequestAborted).ConfigureAwait(false);
        }
    }

    // On a request of its own: whose rights are at hand has no name, only the kinds of rights that the menu asks for.
    private async Task<IReadOnlyList<FramePart>> DrawAsync(HttpContext asked, string? country)
    {
        var scope = scopes.CreateAsyncScope();
        await using var _ = scope.ConfigureAwait(false);
        using var page = new MemoryStream();
        var endpoint = asked.GetEndpoint()!;
        var http = new DefaultHttpContext { RequestServices = scope.ServiceProvider };
        http.User = new(new ClaimsIdentity(asked.User.FindAll(ClaimTypes.Role).Select(role => new Claim(ClaimTypes.Role, role.Value)), "frame"));
        (http.Request.Method, http.Request.Scheme, http.Request.Host, http.Request.Path) = (HttpMethods.Get, asked.Request.Scheme, asked.Request.Host, $"/letters/{Code}");
        http.Request.Headers.Cookie = string.Join("; ", asked.Request.Cookies.Where(cookie => Lamp.IsLamp(cookie.Key)).Select(cookie => $"{cookie.Key}={cookie.Value}"));
        http.Request.RouteValues["Code"] = Code;
        http.Features.Set(new LetterFrameWish(country));
        http.SetEndpoint(endpoint);
        http.Response.Body = page;
        await endpoint.RequestDelegate!(http).ConfigureAwait(false);
        await http.Response.CompleteAsync().ConfigureAwait(false);
        var text = Encoding.UTF8.GetString(page.ToArray());
        return http.Response.StatusCode == StatusCodes.Status200OK && text.Contains(Letter, StringComparison.Ordinal)
            ? Cut(TokenField().Replace(text, "${1}" + Token))
            : throw new InvalidOperationException("The frame of a letter couldn't be drawn.");
    }

    private static List<FramePart> Cut(string text) =>
    [
        .. Slots().Split(text).Where(piece => piece.Length > 0).Select(piece => new FramePart(piece switch
        {
            Letter => FrameSlot.Letter,
            Code => FrameSlot.Code,
            Token => FrameSlot.Token,
            _ => FrameSlot.None,
        }, Encoding.UTF8.GetBytes(piece))),
    ];

    [GeneratedRegex("(name=\"__RequestVerificationToken\" value=\")[^\"]*")]
    private static partial Regex TokenField();

    [GeneratedRegex($"({Letter}|{Code}|{Token})")]
    private static partial Regex Slots();

    private sealed record FrameKind(bool Teaches, bool Owns, bool Sends, bool Guards, string Lamp, PaperSize Paper);

    private enum FrameSlot
    {
        None,
        Letter,
        Code,
        Token,
    }

    private sealed record FramePart(FrameSlot Slot, byte[] Text)
    {
        public byte[] Of(byte[] letter, byte[] code, byte[] token) => Slot switch
        {
            FrameSlot.Letter => letter,
            FrameSlot.Code => code,
            FrameSlot.Token => token,
            _ => Text,
        };
    }
}

/// <summary>Gives out letters that were sent, before any page is drawn.</summary>
public static class KeptLetters
{
    /// <summary>Who asks for a letter that is kept, and the letter, by one statement; null for anything else.</summary>
    /// <param name="http">The request.</param>
    /// <param name="session">The session.</param>
    public static async Task<LetterAtHand?> FindAsync(HttpContext http, Domain.People.SessionId session)
    {
        ArgumentNullException.ThrowIfNull(http);
        if (http.GetEndpoint()?.Metadata.GetMetadata<KeptPageAttribute>() is null || !HttpMethods.IsGet(http.Request.Method) || CodeOf(http) is not { } code)
        {
            return null;
        }

        var found = await http.RequestServices.GetRequiredService<LetterPageRegister>().OpenAsync(session, code, http.RequestAborted).ConfigureAwait(false);
        http.Features.Set(found);
        return found;
    }

    /// <summary>Gives out what was found; anything else goes on. It comes after the rights were asked.</summary>
    /// <param name="app">The application.</param>
    public static void UseKeptLetters(this WebApplication app) => app.Use((http, next) =>
        http.Features.Get<LetterAtHand>() is { } letter && CodeOf(http) is { } code
            ? http.RequestServices.GetRequiredService<LetterFrames>().WriteAsync(http, letter, code)
            : next(http));

    private static BatchCode? CodeOf(HttpContext http) =>
        http.Request.RouteValues["Code"] is string typed && BatchCode.Read(typed) is Outcome<BatchCode>.Done(var code) ? code : null;
}
