using System.Net;
using System.Text;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Letters;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class KeptLetterTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly Actor Colleague = new(new AccountId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_kept_is_what_would_be_drawn_afresh_and_it_is_what_is_given_out()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await SentAsync(student, teacher);
        var known = Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(code)).Value;
        using var scope = host.Services.CreateScope();
        var sent = (await scope.ServiceProvider.GetRequiredService<LetterBoxBook>().ReadAsync(Colleague, known, Ct))!;

        var (afresh, _) = await host.Services.GetRequiredService<LetterPages>().MakeAsync(Colleague, known, sent, Ct);

        Assert.Equal(afresh, Encoding.UTF8.GetString(sent.Page!));
        Assert.Contains("Mind the corners &amp; &lt;b&gt;nothing&lt;/b&gt; else.", afresh, StringComparison.Ordinal);
        Assert.DoesNotMatch("(src|href)=\"[^\"]*\\.[a-z0-9]{10}\\.", afresh);
        foreach (var reader in new[] { student, teacher })
        {
            Assert.Contains(afresh, (await reader.See($"/letters/{code}")).Page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_kept_letter_looks_and_guards_itself_like_the_page_that_drew_it()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await SentAsync(student, teacher);
        foreach (var reader in new[] { student, teacher })
        {
            using var kept = await reader.GetAsync(new Uri($"/letters/{code}", UriKind.Relative), Ct);
            await LetGoAsync(code);
            using var drawn = await reader.GetAsync(new Uri($"/letters/{code}", UriKind.Relative), Ct);

            Assert.Equal(Headers(drawn), Headers(kept));
            Assert.Equal(await TextAsync(drawn), await TextAsync(kept));
        }
    }

    [Fact]
    public async Task The_form_round_a_kept_letter_signs_out_and_then_nothing_is_read()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/letters/{await SentAsync(student, teacher)}";
        var page = (await student.See(path)).Page;
        Assert.Contains("<article class=\"letter\"", page, StringComparison.Ordinal);

        using var left = await Form.Of(student, path, page, "/account/sign-out").Post();

        Assert.Equal("/", left.Leads());
        Assert.StartsWith("/account/sign-in", (await student.GetAsync(new Uri(path, UriKind.Relative), Ct)).Leads(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_else_reads_a_kept_letter_and_its_frame_holds_nothing_of_who_drew_it()
    {
        using var student = await host.Student();
        using var other = await host.Student();
        using var teacher = await host.Teacher();
        var (mine, theirs) = (await SentAsync(student, teacher), await SentAsync(other, teacher));

        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/letters/{mine}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{theirs}")).Status);
        var first = (await student.See($"/letters/{mine}")).Page;
        var second = (await other.See($"/letters/{theirs}")).Page;
        Assert.DoesNotContain(mine, second, StringComparison.Ordinal);
        Assert.DoesNotContain(LetterFrames.Code, first + second, StringComparison.Ordinal);
        Assert.Equal(Frame(first).Replace(mine, theirs, StringComparison.Ordinal), Frame(second));
    }

    private static string Frame(string page)
    {
        using var document = new HtmlParser().ParseDocument(page);
        document.QuerySelector("article.letter")!.Remove();
        foreach (var token in document.QuerySelectorAll("input[name=__RequestVerificationToken]").ToList())
        {
            token.Remove();
        }

        return document.DocumentElement.OuterHtml;
    }

    private static async Task<string> TextAsync(HttpResponseMessage response)
    {
        using var document = new HtmlParser().ParseDocument(await response.Content.ReadAsStringAsync(Ct));
        foreach (var token in document.QuerySelectorAll("input[name=__RequestVerificationToken]").ToList())
        {
            token.Remove();
        }

        return document.DocumentElement.OuterHtml;
    }

    private static IEnumerable<string> Headers(HttpResponseMessage response) => response.Headers.Concat(response.Content.Headers)
        .Where(header => header.Key is not ("Content-Length" or "Transfer-Encoding" or "Date" or "Set-Cookie"))
        .Select(header => $"{header.Key}: {string.Join(',', header.Value)}").Order(StringComparer.Ordinal);

    private async Task LetGoAsync(string code)
    {
        await using var db = host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContext();
        var known = Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(code)).Value;
        await db.Set<LetterSending>().Where(row => db.Set<Batch>().Any(batch => batch.Id == row.Batch && batch.Code == known))
            .ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Page, (byte[]?)null), Ct);
    }

    private async Task<string> SentAsync(HttpClient student, HttpClient teacher)
    {
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        using var mended = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Set("Block.lesson", "Mind the corners & <b>nothing</b> else.").Post();
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        return code;
    }
}
