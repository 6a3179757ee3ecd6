using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Web.Features.Letters;

/// <summary>
/// The pages of letters that were sent: made once by the component that shows every letter, and kept. What is attached to a
/// reed afterwards isn't in them until a correction is sent; what is removed makes them go and be made again.
/// </summary>
public sealed class LetterPages(IServiceScopeFactory scopes, ILoggerFactory log, LetterPageRegister register)
{
    /// <summary>The page of a letter that was sent; it is made and kept where there is none yet.</summary>
    /// <param name="actor">Who reads it, or has just sent it.</param>
    /// <param name="sent">The letter.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<MarkupString> OpenAsync(Actor actor, SentLetter sent, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(sent);
        if (sent.Page is { } kept)
        {
            return new(Encoding.UTF8.GetString(kept));
        }

        if (BatchCode.Read(sent.Letter.Code) is not Outcome<BatchCode>.Done(var code))
        {
            throw new InvalidOperationException("A letter was sent about a batch without a code.");
        }

        var (page, heard) = await MakeAsync(actor, code, sent, ct).ConfigureAwait(false);
        await register.KeepAsync(code, sent.Ordinal, Encoding.UTF8.GetBytes(page), heard, ct).ConfigureAwait(false);
        return new(page);
    }

    /// <summary>Makes the page of a letter that was sent.</summary>
    /// <param name="actor">Who reads it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="sent">The letter.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The page, and what it plays and shows of what was attached.</returns>
    public async Task<(string Page, IReadOnlyList<RecordingId> Heard)> MakeAsync(Actor actor, BatchCode code, SentLetter sent, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(sent);
        var scope = scopes.CreateAsyncScope();
        await using var _ = scope.ConfigureAwait(false);
        var all = await scope.ServiceProvider.GetRequiredService<RecordingsBook>().OfBatchAsync(actor, code, ct).ConfigureAwait(false);
        var heard = all.Where(one => one.RecordedAt <= sent.SentAt).ToList();
        var renderer = new HtmlRenderer(scope.ServiceProvider, log);
        await using var __ = renderer.ConfigureAwait(false);
        var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            [nameof(LetterArticle.Sent)] = sent,
            [nameof(LetterArticle.Recordings)] = heard,
        });
        var page = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<LetterArticle>(parameters).ConfigureAwait(true)).ToHtmlString()).ConfigureAwait(false);
        return (page, heard.ConvertAll(one => one.Id));
    }
}
