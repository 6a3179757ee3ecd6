using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Guardians;

/// <summary>What a guardian reads on their own pages, and what their student reads of them.</summary>
public sealed class WardPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task What_there_is_none_of_is_said_in_words_and_not_counted()
    {
        var (guardian, ward) = await host.AgreedAsync(await host.YoungerAsync("Aslaug Vale"), ClinicHost.NewEmail("rosa"));

        Assert.Contains("Name and address. No reeds were sent yet.", await guardian.TextAsync(ward), StringComparison.Ordinal);
        Assert.Contains("No reeds were sent yet.", await guardian.TextAsync("/wards"), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b0 ", Said(await guardian.TextAsync(ward)) + Said(await guardian.TextAsync("/wards")));
    }

    [Fact]
    public async Task What_there_is_stands_in_one_sentence_and_a_letter_to_come_is_told()
    {
        var student = await host.YoungerAsync("Birte Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        await host.Announce("Birte Vale", "red thread", "blue thread");
        await IntakeWalk.Begin(student);

        var page = await guardian.TextAsync(ward);

        Assert.Contains("Name and address, one batch with 2 reeds and what was said about it, and one description that isn’t sent yet", page, StringComparison.Ordinal);
        using var document = new HtmlParser().ParseDocument(page);
        var line = document.QuerySelector(".ward-batches li")!.TextContent;
        Assert.Contains("Waiting for the parcel", line, StringComparison.Ordinal);
        Assert.Matches(@"announced today at \d\d:\d\d", line);
        Assert.Contains("When the parcel is opened you can see it here.", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_found_in_the_parcel_stands_beside_each_batch_and_on_top_of_it()
    {
        var student = await host.YoungerAsync("Gudrun Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        var path = $"/batches/{(await host.Announce("Gudrun Vale", "red thread", "blue thread", "white thread")).Batch.Code}";
        using var teacher = await host.Teacher();
        var form = await Form.At(teacher, $"{path}/arrival");
        form.Set("Form.Reeds[1].Presence", "Missing").Set("Form.Reeds[2].Presence", "Here").Set("Form.Reeds[2].Fitness", "Mould")
            .Set("Form.Reeds[3].Presence", "Here").Set("Form.Reeds[3].Fitness", "DryFirst");
        using var saved = await form.Post();

        var line = Said(await guardian.TextAsync(ward));
        Assert.Contains("Unpacked", line, StringComparison.Ordinal);
        Assert.Contains("One reed wasn’t in the parcel.", line, StringComparison.Ordinal);
        Assert.Contains("Reed 2 came with mould: nobody plays it or works on it.</strong> Please look with them", line, StringComparison.Ordinal);
        Assert.Contains("Reed 3 was damp: it dries first", line, StringComparison.Ordinal);
        Assert.Contains("every one that is there and fit to be played is tried", line, StringComparison.Ordinal);

        var batch = Said(await guardian.TextAsync(path));
        Assert.InRange(batch.IndexOf("Please look at the other reeds before one is played", StringComparison.Ordinal), 0, batch.IndexOf("Where the reeds are", StringComparison.Ordinal));
        Assert.Contains("Nobody did anything wrong", batch, StringComparison.Ordinal);

        using var taken = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        var over = Said(await guardian.TextAsync(ward));
        Assert.Contains("Reed 2 came with mould", over, StringComparison.Ordinal);
        Assert.DoesNotContain("One reed wasn’t in the parcel.", over, StringComparison.Ordinal);
        Assert.Contains("There is no letter yet.", over, StringComparison.Ordinal);
        Assert.DoesNotContain($"href=\"{path}", over, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_speaks_to_a_guardian_of_the_student_and_leads_back_to_their_page()
    {
        var student = await host.YoungerAsync("Cilla Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        var path = $"/batches/{(await host.Announce("Cilla Vale", "red thread")).Batch.Code}";

        var theirs = Said(await guardian.TextAsync($"{path}?sent=yes"));
        var own = Said(await student.TextAsync(path));

        Assert.Contains("Where the reeds are", theirs, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b[Yy]ours? (reed|batch|letter)", theirs);
        Assert.Contains($"href=\"{ward}\"", theirs, StringComparison.Ordinal);
        Assert.Contains("Where your reeds are", own, StringComparison.Ordinal);
        Assert.DoesNotContain("/wards/", own, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guardian_who_looks_for_batches_is_led_to_their_own_page_and_to_nothing_that_refuses_them()
    {
        var (guardian, _) = await host.AgreedAsync(await host.YoungerAsync("Jorun Vale"), ClinicHost.NewEmail("rosa"));

        var page = Said(await guardian.TextAsync("/batches"));

        Assert.Contains("href=\"/wards\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/intake\"", page, StringComparison.Ordinal);
        Assert.Contains("You answer for a student here", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consent_that_was_taken_back_by_mistake_is_given_again_where_it_was_taken()
    {
        var student = await host.YoungerAsync("Dagny Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        using var taken = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        Assert.Contains("If you didn’t mean to, press “I agree again” below", await guardian.TextAsync(taken.Leads()!), StringComparison.Ordinal);

        using var given = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Post();

        Assert.Contains("can go on where they stopped", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
        Assert.DoesNotContain("That is noted", await guardian.TextAsync(ward), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_follows_from_taking_consent_back_is_read_before_anything_happens()
    {
        var (guardian, ward) = await host.AgreedAsync(await host.YoungerAsync("Ebba Vale"), ClinicHost.NewEmail("rosa"));

        using var page = new HtmlParser().ParseDocument((await guardian.See(ward)).Page);
        Assert.Empty(page.QuerySelectorAll("main form"));
        Assert.Equal($"{ward}/take-back", page.QuerySelector("main .caution a.button")!.GetAttribute("href"));

        var step = Said(await guardian.TextAsync($"{ward}/take-back"));
        Assert.Contains("Nothing has happened yet.", step, StringComparison.Ordinal);
        Assert.Contains("Private links to the letters are closed for good", step, StringComparison.Ordinal);
        Assert.Contains("writing and work go on from where they were", step, StringComparison.Ordinal);
        Assert.Contains("You agreed", await guardian.TextAsync(ward), StringComparison.Ordinal);

        using var taken = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        var after = await guardian.TextAsync(taken.Leads()!);
        Assert.Contains("writing and work go on from where they were. Private links to the letters stay closed; new ones can be made.", after, StringComparison.Ordinal);
        Assert.Equal(ward, (await guardian.See($"{ward}/take-back")).Location);
    }

    [Fact]
    public async Task What_was_noted_is_said_only_while_it_still_stands()
    {
        var (guardian, ward) = await host.AgreedAsync(await host.YoungerAsync("Frode Vale"), ClinicHost.NewEmail("rosa"));
        using var taken = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        Assert.Equal($"{ward}?done=withdrawn", taken.Leads());
        using var given = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Post();
        Assert.Equal($"{ward}?done=given", given.Leads());

        Assert.Contains("That is noted", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
        foreach (var done in new[] { "withdrawn", "yes", "", "else" })
        {
            Assert.DoesNotContain("That is noted", await guardian.TextAsync($"{ward}?done={done}"), StringComparison.Ordinal);
        }

        using var again = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        Assert.DoesNotContain("That is noted", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_younger_student_reads_who_agreed_for_them()
    {
        var student = await host.YoungerAsync("Edle Vale");
        await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"), "Rosa Harbour");

        Assert.Contains("Your guardian, <bdi>Rosa Harbour</bdi>, has agreed.", await student.TextAsync("/guardian"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_a_grown_student_is_called_by_their_age_and_a_younger_ones_by_the_guardian()
    {
        using var grown = new HtmlParser().ParseDocument((await (await host.Student("Grete")).See("/guardian")).Page);
        using var young = new HtmlParser().ParseDocument((await (await host.YoungerAsync("Hella")).See("/guardian")).Page);

        Assert.Equal(("Your age", "Your age"), (grown.Title, grown.QuerySelector("h1")!.TextContent));
        Assert.Equal(("Your guardian", "Your guardian"), (young.Title, young.QuerySelector("h1")!.TextContent));
    }

    private static string Said(string page) => page[page.IndexOf("<main", StringComparison.Ordinal)..page.IndexOf("</main", StringComparison.Ordinal)];
}
