using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Tests.Account;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>A private link in the hand of whoever has it, and on the page of whoever teaches.</summary>
public sealed partial class LetterLinkPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly AccountId Colleague = new(Parcel.NewOperation().Value);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_teacher_makes_a_link_sees_it_once_and_a_stranger_reads_the_letter_by_it_and_nothing_else()
    {
        using var teacher = await host.Teacher();
        var batch = await SentAsync("Ronja");
        var path = $"/batches/{batch.Code}/letter";
        var before = Form.Named(teacher, path, (await teacher.See(path)).Page, "letter-link").Set("Link.Days", "7");
        var (_, made, _) = await (await before.Post()).Read();
        var link = LinkIn(made);

        var (_, again, _) = await (await before.Post()).Read();
        Assert.DoesNotContain("/read/", again, StringComparison.Ordinal);
        Assert.Contains("shown then", again, StringComparison.Ordinal);
        Assert.DoesNotContain("/read/", (await teacher.See(path)).Page, StringComparison.Ordinal);

        using var stranger = host.Visitor();
        using var answer = await stranger.GetAsync(new Uri(link, UriKind.Relative), Ct);
        var page = await answer.Content.ReadAsStringAsync(Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var read = new HtmlParser().ParseDocument(page);
        Assert.NotNull(read.QuerySelector("article.letter"));
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("noindex, nofollow", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")));
        Assert.True(answer.Headers.CacheControl is { NoStore: true, Private: true });
        Assert.Empty(answer.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : []); // no session, and nothing to be known again by
        Assert.Empty(read.QuerySelectorAll("form, nav, .masthead, .colophon, iframe"));
        Assert.All(read.QuerySelectorAll("a").OfType<IHtmlAnchorElement>(), way => Assert.StartsWith($"{link}/", way.GetAttribute("href"), StringComparison.Ordinal));
        Assert.DoesNotContain(batch.Code + "\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_letters_file_and_what_it_plays_come_by_the_link_too()
    {
        using var _ = await host.Student("Silje");
        var batch = (await host.Announce("Silje", "green thread", "red thread")).Batch;
        var reed = batch.Reeds[0].Id;
        await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, Colleague, isFromStudio: true);
        await RecordingParcel.KeepAsync(host, reed, RecordingKind.FinalSound, Colleague, isFromStudio: true);
        var memo = await RecordingParcel.KeepAsync(host, reed, RecordingKind.VoiceMemo, Colleague, isFromStudio: true);
        await host.SendLetter(batch.Code);
        var later = await RecordingParcel.KeepAsync(host, reed, RecordingKind.FinalSound, Colleague, isFromStudio: true);
        var link = await MadeAsync(batch.Code);
        using var stranger = host.Visitor();

        using var page = new HtmlParser().ParseDocument((await stranger.See(link)).Page);
        var sounds = page.QuerySelectorAll("audio").Select(sound => sound.GetAttribute("src")!).ToList();
        Assert.Equal(2, sounds.Count);
        foreach (var (path, type) in sounds.Select(sound => (sound, "audio/mpeg")).Append(($"{link}/file?paper=a4", "application/pdf")))
        {
            using var got = await stranger.GetAsync(new Uri(path, UriKind.Relative), Ct);
            Assert.Equal((HttpStatusCode.OK, type), (got.StatusCode, got.Content.Headers.ContentType!.MediaType));
            Assert.Equal("no-referrer", Assert.Single(got.Headers.GetValues("Referrer-Policy")));
            Assert.True(got.Headers.CacheControl is { NoStore: true, Private: true });
        }

        foreach (var no in new[] { memo, later })
        {
            Assert.DoesNotContain(sounds, sound => sound.EndsWith($"{no.Id.Value}", StringComparison.Ordinal));
            Assert.Equal(HttpStatusCode.NotFound, (await stranger.See($"{link}/recordings/{no.Id.Value}")).Status);
        }

        Assert.StartsWith("/account/sign-in", (await stranger.See($"/recordings/{sounds[0].Split('/')[^1]}")).Location, StringComparison.Ordinal);
        Assert.StartsWith("/account/sign-in", (await stranger.See($"/letters/{batch.Code}")).Location, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Above_a_corrected_letter_stands_what_was_put_right_and_when_and_no_way_to_what_was_sent_before()
    {
        var batch = await SentAsync("Solveig");
        var link = await MadeAsync(batch.Code);
        await CorrectAsync(batch.Code, "It is the upper blade & not the lower.");
        using var stranger = host.Visitor();

        using var page = new HtmlParser().ParseDocument((await stranger.See(link)).Page);

        var said = page.QuerySelectorAll("p.letter-notice").Single(notice => notice.QuerySelector("bdi") is not null);
        Assert.Matches(@"Corrected on \d{1,2} \w+ \d{4}: It is the upper blade & not the lower\.", Spaces().Replace(said.TextContent, " "));
        Assert.Matches(@"^Corrected( at \d{2}:\d{2})?: it takes the place", page.QuerySelector("article .letter-corrected")!.TextContent);
        Assert.All(page.QuerySelectorAll("a").OfType<IHtmlAnchorElement>(), way => Assert.StartsWith($"{link}/", way.GetAttribute("href"), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Wrong_over_and_closed_links_are_told_with_the_same_words_and_how_to_go_on()
    {
        using var teacher = await host.Teacher();
        var batch = await SentAsync("Tuva");
        var path = $"/batches/{batch.Code}/letter";
        var (over, closed) = (await MadeAsync(batch.Code), await MadeAsync(batch.Code));
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(over.Split('/')[^1])));
            Assert.Equal(1, await db.Set<LetterLink>().Where(row => row.SecretHash == hash).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.ExpiresAt, DateTimeOffset.UnixEpoch), Ct));
        }

        var shown = (await teacher.See(path)).Page;
        using var list = new HtmlParser().ParseDocument(shown);
        var id = list.QuerySelector("button[name=Close]")!.GetAttribute("value")!; // the other one’s time is over
        using var done = await Form.Named(teacher, path, shown, "close-letter-link").Set("Close", id).Post();
        Assert.Equal($"{path}?done=link-closed", done.Leads());
        Assert.Contains("The link is closed.", (await teacher.See($"{path}?done=link-closed")).Page, StringComparison.Ordinal);

        using var stranger = host.Visitor();
        var ends = new List<string>();
        foreach (var link in new[] { over, closed, "/read/" + new string('x', 43), "/read/short" })
        {
            var (status, page, _) = await stranger.See(link);
            Assert.Equal(HttpStatusCode.NotFound, status);
            ends.Add(State().Replace(page, "")); // the framework's own, sealed anew each time
            Assert.Equal(link, (await stranger.See($"{link}/file")).Location);
        }

        Assert.Single(ends.Distinct());
        Assert.Contains("ask your teacher for a new link", ends[0], StringComparison.Ordinal);
        Assert.DoesNotContain("<form", ends[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_page_closes_one_link_after_another_and_each_button_has_a_name_of_its_own()
    {
        using var teacher = await host.Teacher();
        var batch = await SentAsync("Ylva");
        var path = $"/batches/{batch.Code}/letter";
        string[] links = [await MadeAsync(batch.Code), await MadeAsync(batch.Code)];
        var shown = (await teacher.See(path)).Page;
        using var list = new HtmlParser().ParseDocument(shown);
        var buttons = list.QuerySelectorAll("button[name=Close]");
        Assert.Equal(["Close this link, number 1 in the list", "Close this link, number 2 in the list"], buttons.Select(button => button.GetAttribute("aria-label")));

        foreach (var button in buttons)
        {
            using var done = await Form.Named(teacher, path, shown, "close-letter-link").Set("Close", button.GetAttribute("value")!).Post();
            Assert.Equal($"{path}?done=link-closed", done.Leads());
        }

        using var stranger = host.Visitor();
        foreach (var link in links)
        {
            Assert.Equal(HttpStatusCode.NotFound, (await stranger.See(link)).Status);
        }
    }

    [Fact]
    public async Task A_link_of_somebody_who_was_erased_says_so_and_names_nobody()
    {
        var batch = await SentAsync("Alma");
        var gone = new Actor(Colleague, null, IsTeacher: true, IsOwner: false);
        await using var scope = host.Services.CreateAsyncScope();
        Assert.IsType<Outcome<MadeLetterLink>.Done>(await scope.ServiceProvider.GetRequiredService<LetterLinkBook>().MakeAsync(gone, batch.Code, 30, Parcel.NewOperation(), Ct));
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See($"/batches/{batch.Code}/letter")).Page);

        Assert.StartsWith("Made by somebody who isn’t here any more, today", Spaces().Replace(page.QuerySelector(".letter-link-list .hint")!.TextContent, " ").Trim(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_form_without_a_time_that_can_be_chosen_says_so_beside_it_and_makes_nothing()
    {
        using var teacher = await host.Teacher();
        var path = $"/batches/{(await SentAsync("Una")).Code}/letter";

        var (_, page, _) = await (await Form.Named(teacher, path, (await teacher.See(path)).Page, "letter-link").Set("Link.Days", "3650").Post()).Read();

        using var refused = new HtmlParser().ParseDocument(page);
        Assert.NotNull(refused.QuerySelector("#f-Link-Days-error"));
        Assert.Empty(refused.QuerySelectorAll(".letter-link-list li"));
    }

    [Fact]
    public async Task Who_began_by_a_link_gets_the_letter_by_mail_as_a_link_that_opens_it_and_nothing_keeps_its_secret()
    {
        await host.OpenStudio();
        using var phone = host.Visitor();
        var email = ClinicHost.NewEmail("vigdis");
        var begin = await host.BeginLinkAsync(phone, email);
        using var begun = await (await Form.At(phone, begin)).Set("Form.Name", "Vigdis").Set("Form.Age", "OldEnough").Post();
        var batch = (await host.Announce("Vigdis", "green thread")).Batch;
        await host.SendLetter(batch.Code);

        var link = await host.Mailed(email, "/read/");
        var mail = await MailedLinks.MailAsync(host.MailFolder, email, $"The letter about your batch {batch.Code}", Ct);

        using var stranger = host.Visitor();
        Assert.Contains("article class=\"letter\"", (await stranger.See(link)).Page, StringComparison.Ordinal);
        Assert.DoesNotContain($"/letters/{batch.Code}", mail, StringComparison.Ordinal);
        Assert.DoesNotContain("nothing private", mail, StringComparison.Ordinal);
        using var teacher = await host.Teacher();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            Assert.Empty(await EveryColumn.HoldingAsync(db, link.Split('/')[^1], Ct));
            Assert.NotEmpty(await EveryColumn.HoldingAsync(db, $"/letters/{batch.Code}", Ct)); // what the mail’s job is known by: it is looked at
        }

        Assert.Contains("Went out with the mail", (await teacher.See($"/batches/{batch.Code}/letter")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_a_password_gets_the_page_to_sign_in_at_as_before()
    {
        var email = ClinicHost.NewEmail("wibke");
        await host.Admit("Wibke", email);
        var batch = (await host.Announce("Wibke", "green thread")).Batch;
        await host.SendLetter(batch.Code);

        Assert.Equal($"/letters/{batch.Code}", await host.Mailed(email, $"/letters/{batch.Code}"));
    }

    private async Task<Batch> SentAsync(string student)
    {
        using var _ = await host.Student(student);
        var batch = (await host.Announce(student, "green thread", "red thread")).Batch;
        await host.SendLetter(batch.Code);
        return batch;
    }

    private async Task<string> MadeAsync(BatchCode code)
    {
        using var teacher = await host.Teacher();
        var path = $"/batches/{code}/letter";
        return LinkIn((await (await Form.Named(teacher, path, (await teacher.See(path)).Page, "letter-link").Set("Link.Days", "30").Post()).Read()).Page);
    }

    private async Task CorrectAsync(BatchCode code, string putRight)
    {
        var teacher = new Actor(Colleague, null, IsTeacher: true, IsOwner: false);
        await using var scope = host.Services.CreateAsyncScope();
        var (letters, corrections) = (scope.ServiceProvider.GetRequiredService<LetterBook>(), scope.ServiceProvider.GetRequiredService<LetterCorrectionBook>());
        var letter = (await letters.ReadAsync(teacher, code, Ct))!;
        await corrections.BeginAsync(teacher, code, letter.Version, Parcel.NewOperation(), Ct);
        await corrections.SayAsync(teacher, code, null, putRight, Parcel.NewOperation(), Ct);
        Assert.IsType<Outcome<LetterView>.Done>(await corrections.SendAsync(teacher, code, letter.Mark, putRight, Parcel.NewOperation(), Ct));
    }

    private static string LinkIn(string page) => new Uri(Link().Match(page).Groups[1].Value).AbsolutePath;

    [GeneratedRegex("\\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex("<!--Blazor[^>]*-->")]
    private static partial Regex State();

    [GeneratedRegex("<code class=\"link-once\" id=\"letter-link\">([^<]+)</code>")]
    private static partial Regex Link();
}
