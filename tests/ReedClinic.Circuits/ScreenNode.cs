namespace ReedClinic.Circuits;

/// <summary>One thing on a page as a browser would hold it: an element, a piece of text, or the place of a component.</summary>
public sealed class ScreenNode
{
    private readonly Dictionary<string, string> _attributes = [];
    private readonly Dictionary<string, ulong> _handlers = [];

    internal ScreenNode(ScreenNode? parent, string? name = null, string? words = null) => (Parent, Name, Words) = (parent, name, words);

    /// <summary>The element's name; null for text and components.</summary>
    public string? Name { get; }

    /// <summary>Text, or a piece of HTML that never changes.</summary>
    public string? Words { get; internal set; }

    /// <summary>Where it stands.</summary>
    public ScreenNode? Parent { get; }

    /// <summary>What stands in it.</summary>
    public IReadOnlyList<ScreenNode> Children => Inside;

    internal List<ScreenNode> Inside { get; } = [];

    /// <summary>The event handlers on it: <c>onclick</c> and its id.</summary>
    public IReadOnlyDictionary<string, ulong> Handlers => _handlers;

    /// <summary>An attribute, or an empty text.</summary>
    public string this[string attribute] => _attributes.GetValueOrDefault(attribute, "");

    /// <summary>Everything in it and below it, itself first.</summary>
    public IEnumerable<ScreenNode> All => Inside.SelectMany(child => child.All).Prepend(this);

    /// <summary>What can be read in it.</summary>
    public string Text => Words ?? string.Concat(Inside.Select(child => child.Text));

    internal void Set(Frame attribute)
    {
        if (attribute.Handler > 0)
        {
            _handlers[attribute.Name!] = attribute.Handler;
        }
        else
        {
            _attributes[attribute.Name!] = attribute.Value ?? "";
        }
    }

    internal void Forget(string attribute)
    {
        _attributes.Remove(attribute);
        _handlers.Remove(attribute);
    }
}
