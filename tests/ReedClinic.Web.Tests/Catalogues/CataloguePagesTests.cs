using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Catalogues;

/// <summary>The catalogue over HTTP: what the owner adds, and where it stands from then on.</summary>
public sealed class CataloguePagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string List = "/studio/catalogue";

    [Fact]
    public async Task What_an_owner_adds_stands_in_the_list_at_the_bench_and_on_the_sheet_and_in_what_is_reasoned()
    {
        using var owner = await OwnerAsync();
        var scene = await BenchScene.Open(host, "Alva", Permission.SafeChangesOnly, "blue thread");
        using var teacher = await host.Teacher();
        var name = Name("fibres lifted");
        var key = await AddFaultAsync(owner, name);

        var lists = await See(teacher, List);
        var own = lists.GetElementById(key)!;
        Assert.Contains(name, own.TextContent, StringComparison.Ordinal);
        Assert.Contains("our own, common practice here", own.TextContent, StringComparison.Ordinal);
        Assert.Null(own.QuerySelector("a"));
        Assert.Contains("published: ", lists.QuerySelector("#list-fault .catalogue-shipped")!.TextContent, StringComparison.Ordinal);

        var posted = (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Finding").Set("FindingKind", key)
            .Set("Character", "Fault").Set("Zone", "TipEdge").Set("Blades", "Both").Set("Sides", "Both").Set("Words", "at the left");
        using var saved = await posted.Post();
        Assert.Equal(HttpStatusCode.SeeOther, saved.StatusCode);
        Assert.Contains($"{name}: at the left", (await See(teacher, scene.Page)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains(Capital(name), (await See(teacher, $"/batches/{scene.Batch.Code}/common-thread")).QuerySelector(".thread-sheet")!.TextContent, StringComparison.Ordinal);
        var reasoned = (await See(teacher, $"{scene.Page}/evidence")).Body!.TextContent;
        Assert.Contains(name, reasoned, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("our own, common practice here", reasoned, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_refused_stands_beside_its_field_and_nothing_typed_is_lost()
    {
        using var owner = await OwnerAsync();
        var form = (await Form.At(owner, $"{List}/new?kind=Fault")).Set("Form.Name", "tip too thick").Set("Form.Line", "").Set("Form.Zone", "TipEdge")
            .Set("Form.Signs", "no-such-sign").Set("Form.Steps", "blend");

        using var refused = await form.Post();

        var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        Assert.Contains("comes with the program", page.GetElementById("f-Form-Name-error")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.GetElementById("f-Form-Line-error"));
        Assert.Contains("“no-such-sign”", page.GetElementById("f-Form-Signs-error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("by which test", page.GetElementById("f-Form-SeenBy-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("tip too thick", page.GetElementById("f-Form-Name")!.GetAttribute("value"));
        Assert.Equal("TipEdge", ((IHtmlSelectElement)page.QuerySelector("select[name='Form.Zone']")!).Value);
        Assert.Equal("blend", ((IHtmlSelectElement)page.QuerySelector("select[name='Form.Steps']")!).Value);
    }

    [Fact]
    public async Task It_is_told_better_retired_and_brought_back_and_old_forms_clash()
    {
        using var owner = await OwnerAsync();
        var (first, second) = (Name("hairs at the tip"), Name("shreds at the tip"));
        var key = await AddFaultAsync(owner, first);
        var path = new HtmlParser().ParseDocument((await owner.See(List)).Page).QuerySelector($"#{key} a")!.GetAttribute("href")!;
        var older = (await Form.At(owner, path)).Set("Form.Line", "Mine.");
        using var kept = await (await Form.At(owner, path)).Set("Form.Name", second).Post();
        Assert.Equal($"{List}?done=kept#{key}", Where(kept));

        using var clash = await older.Post();
        var shown = new HtmlParser().ParseDocument((await clash.Read()).Page);
        Assert.Contains(second, shown.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Mine.", shown.GetElementById("f-Form-Line")!.GetAttribute("value"));

        using var retired = await Form.Named(owner, path, (await owner.See(path)).Page, "entry-end").Post();
        Assert.Equal($"{List}?done=retired#{key}", Where(retired));
        Assert.Contains("retired", (await See(owner, List)).GetElementById(key)!.TextContent, StringComparison.Ordinal);

        // Meanwhile another one took its name.
        var other = await AddFaultAsync(owner, second);
        var ending = Form.Named(owner, path, (await owner.See(path)).Page, "entry-end");
        using var refused = await ending.Post();
        Assert.Contains("of yours called", new HtmlParser().ParseDocument((await refused.Read()).Page).QuerySelector(".problem-words")!.TextContent, StringComparison.Ordinal);
        using var renamed = await (await Form.At(owner, path)).Set("Form.Name", first).Post();
        using var back = await Form.Named(owner, path, (await owner.See(path)).Page, "entry-end").Post();
        Assert.Equal($"{List}?done=back#{key}", Where(back));
        Assert.NotEqual(key, other);
    }

    [Fact]
    public async Task A_kind_retired_while_its_form_was_open_is_refused_in_a_plain_sentence_and_a_line_that_names_one_is_understood()
    {
        using var owner = await OwnerAsync();
        using var teacher = await host.Teacher();
        var scene = await BenchScene.Open(host, "Embla", Permission.SafeChangesOnly, "blue thread");
        var name = Name("threads of cane");
        var key = await AddFaultAsync(owner, name);
        var path = (await See(owner, List)).QuerySelector($"#{key} a")!.GetAttribute("href")!;

        using var said = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Text", $"{Capital(name)}.").PostTo($"{scene.Page}/line");
        Assert.Equal((key, name), Assert.Single((await scene.Log()).Findings).Finding is var found ? (found.FindingKind.Value, found.Words) : default);

        var open = await BenchScene.Open(host, "Freydis", Permission.SafeChangesOnly, "grey thread");
        var late = (await Form.At(teacher, open.Page, open.Entries)).Set("Kind", "Finding").Set("FindingKind", key)
            .Set("Character", "Fault").Set("Zone", "TipEdge").Set("Blades", "Both").Set("Sides", "Both");
        using var retired = await Form.Named(owner, path, (await owner.See(path)).Page, "entry-end").Post();
        using var refused = await late.Post();
        Assert.Contains("was retired from the list", (await See(teacher, Where(refused))).Body!.TextContent, StringComparison.Ordinal);
        Assert.Empty((await open.Log()).Findings);
        Assert.Contains($"{Capital(name)} (retired)", (await See(teacher, $"/batches/{scene.Batch.Code}/common-thread")).QuerySelector(".thread-sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Own_work_that_takes_cane_asks_first_where_only_safe_changes_were_allowed()
    {
        using var owner = await OwnerAsync();
        using var teacher = await host.Teacher();
        var scene = await BenchScene.Open(host, "Gro", Permission.SafeChangesOnly, "blue thread");
        var name = Name("rub the tip on paper");
        using var added = await (await Form.At(owner, $"{List}/new?kind=Adjustment")).Set("Form.Name", name).Set("Form.Line", "It lays fibres down.")
            .Set("Form.Caution", "Twice is too much.").Set("Form.Zone", "TipEdge").Set("Form.Undo", "No").Post();
        var key = Where(added).Split('#')[1];
        var form = (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Adjustment").Set("AdjustmentKind", key)
            .Set("Zone", "TipEdge").Set("Blades", "Both").Set("Sides", "Both");

        using var asked = await form.Post();
        Assert.Empty((await scene.Log()).Live<Adjustment>());
        Assert.Contains("safe changes only, and this is more than a small step", (await See(teacher, Where(asked))).Body!.TextContent, StringComparison.Ordinal);
        using var agreed = await form.Set("Agreed", "true").Post();
        Assert.Equal($"{name}: {Agreement.Since}", Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words);
    }

    [Fact]
    public async Task An_entry_that_is_not_weighed_is_told_to_the_owner_with_the_reason_and_another_name_mends_it()
    {
        using var owner = await OwnerAsync();
        using var teacher = await host.Teacher();
        var key = await AddFaultAsync(owner, Name("moss in the tube"));
        Assert.Null((await See(owner, List)).QuerySelector(".left-out"));

        // As it would be if a later version of the program shipped a fault of the same name.
        await NamedAsync(key, "Tip too thick");
        var page = await See(owner, List);
        Assert.Equal($"{List}#{key}", page.QuerySelector("div.left-out a")!.GetAttribute("href"));
        Assert.Contains("Not weighed at present: There is another entry called “tip too thick”.", page.GetElementById(key)!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Give it another name", page.GetElementById(key)!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Give it another name", (await See(teacher, List)).GetElementById(key)!.TextContent, StringComparison.Ordinal);

        using var kept = await (await Form.At(owner, page.GetElementById(key)!.QuerySelector("a")!.GetAttribute("href")!)).Set("Form.Name", Name("moss in the tube")).Post();
        Assert.Equal($"{List}?done=kept#{key}", Where(kept));
        Assert.Null((await See(owner, List)).QuerySelector(".left-out"));
    }

    [Fact]
    public async Task A_teaching_note_is_filed_under_an_own_fault_and_stays_there_when_it_is_retired()
    {
        using var owner = await OwnerAsync();
        using var teacher = await host.Teacher();
        var name = Name("grit under the thread");
        var key = await AddFaultAsync(owner, name);
        using var kept = await (await Form.At(teacher, "/notes/new")).Set("Form.Title", name).Set("Form.Text", "Rinse it.").Set("Form.Kinds", key).Set("Form.Step", "keep").Post();
        Assert.Equal("/notes?done=kept", kept.Leads());

        var list = await See(teacher, "/notes");
        Assert.Contains(list.QuerySelectorAll(".note-group h2"), heading => heading.TextContent == Capital(name));
        var note = list.QuerySelectorAll(".note-group a").First(link => link.TextContent == name).GetAttribute("href")!;
        var path = (await See(owner, List)).QuerySelector($"#{key} a")!.GetAttribute("href")!;
        using var retired = await Form.Named(owner, path, (await owner.See(path)).Page, "entry-end").Post();
        var form = await See(teacher, note);
        Assert.True(form.QuerySelector($"input[value={key}]")!.HasAttribute("checked"));
        Assert.Contains($"{name} (retired)", form.QuerySelector(".note-kinds")!.TextContent, StringComparison.Ordinal);
        Assert.Null((await See(teacher, "/notes/new")).QuerySelector($"input[value={key}]"));
    }

    private async Task NamedAsync(string key, string name)
    {
        await using var db = await host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        await db.Set<StudioEntry>().Where(entry => entry.Key == key)
            .ExecuteUpdateAsync(entry => entry.SetProperty(one => one.Name, name).SetProperty(one => one.Version, Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), TestContext.Current.CancellationToken);
    }

    private async Task<HttpClient> OwnerAsync() => await host.SignedIn(await FirstOwnerAsync());

    private static readonly SemaphoreSlim One = new(1, 1);
    private static AccountId _owner;

    private async Task<AccountId> FirstOwnerAsync()
    {
        await One.WaitAsync(TestContext.Current.CancellationToken);
        _owner = await host.OpenStudio() is { Value: var id } && id != default ? new AccountId(id) : _owner;
        One.Release();
        return _owner;
    }

    private static async Task<string> AddFaultAsync(HttpClient owner, string name)
    {
        using var added = await (await Form.At(owner, $"{List}/new?kind=Fault")).Set("Form.Name", name).Set("Form.Line", "tiny hairs of cane stand up").Set("Form.Zone", "TipEdge")
            .Set("Form.SeenBy", "look-plaque").Set("Form.Signs", "hisses").Set("Form.Steps", "smooth-bumps").Post();
        Assert.StartsWith($"{List}?done=added#own-fault-", Where(added), StringComparison.Ordinal);
        return Where(added).Split('#')[1];
    }

    private static async Task<IHtmlDocument> See(HttpClient client, string path) => new HtmlParser().ParseDocument((await client.See(path)).Page);

    private static string Where(HttpResponseMessage answer) =>
        new Uri(new Uri("https://studio.example"), answer.Headers.Location!) is var leads ? leads.PathAndQuery + leads.Fragment : "";

    private static int _names;

    private static string Name(string words) => $"{words} {(char)('a' + Interlocked.Increment(ref _names))}";

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
