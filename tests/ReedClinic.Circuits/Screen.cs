namespace ReedClinic.Circuits;

/// <summary>
/// What a circuit's render batches have drawn so far, kept as a browser keeps it, so that the handler behind a button can be
/// found by what the button is. Safe to read while batches come in.
/// </summary>
public sealed class Screen
{
    private readonly Lock _gate = new();
    private readonly Dictionary<int, ScreenNode> _components = [];
    private readonly List<ScreenNode> _roots = [];
    private readonly HashSet<ulong> _gone = [];

    /// <summary>Every element that stands now.</summary>
    public IReadOnlyList<ScreenNode> Elements
    {
        get
        {
            lock (_gate)
            {
                return [.. _roots.SelectMany(root => root.All).Where(node => node.Name is not null)];
            }
        }
    }

    /// <summary>What can be read on it.</summary>
    public string Text
    {
        get
        {
            lock (_gate)
            {
                return string.Concat(_roots.Select(root => root.Text));
            }
        }
    }

    /// <summary>Handlers that were there once and are gone.</summary>
    public IReadOnlyList<ulong> GoneHandlers
    {
        get
        {
            lock (_gate)
            {
                return [.. _gone];
            }
        }
    }

    /// <summary>The first element of a name that a condition holds for, or null.</summary>
    /// <param name="name">The element's name.</param>
    /// <param name="which">The condition.</param>
    public ScreenNode? Find(string name, Func<ScreenNode, bool> which) => Elements.FirstOrDefault(node => node.Name == name && which(node));

    internal void Apply(RenderBatch batch)
    {
        lock (_gate)
        {
            foreach (var (component, edits) in batch.Changed)
            {
                if (!_components.TryGetValue(component, out var place))
                {
                    _components[component] = place = new ScreenNode(null);
                    _roots.Add(place);
                }

                Change(batch, place, edits);
            }

            foreach (var component in batch.DisposedComponents)
            {
                if (_components.Remove(component, out var place))
                {
                    _roots.Remove(place);
                }
            }

            _gone.UnionWith(batch.DisposedHandlers);
        }
    }

    private void Change(RenderBatch batch, ScreenNode place, Edit[] edits)
    {
        var moves = new List<Edit>();
        foreach (var edit in edits)
        {
            switch (edit.Kind)
            {
                case EditKind.PrependFrame:
                    Insert(batch, place, edit.Sibling, edit.Other);
                    break;
                case EditKind.RemoveFrame:
                    place.Inside.RemoveAt(edit.Sibling);
                    break;
                case EditKind.SetAttribute:
                    place.Inside[edit.Sibling].Set(batch[edit.Other]);
                    break;
                case EditKind.RemoveAttribute:
                    place.Inside[edit.Sibling].Forget(edit.Name!);
                    break;
                case EditKind.UpdateText or EditKind.UpdateMarkup:
                    place.Inside[edit.Sibling].Words = batch[edit.Other].Value ?? "";
                    break;
                case EditKind.StepIn:
                    place = place.Inside[edit.Sibling];
                    break;
                case EditKind.StepOut:
                    place = place.Parent!;
                    break;
                case EditKind.Move:
                    moves.Add(edit);
                    break;
                case EditKind.MovesEnd:
                    Move(place, moves);
                    moves.Clear();
                    break;
            }
        }
    }

    private static void Move(ScreenNode place, List<Edit> moves)
    {
        var moved = moves.ConvertAll(move => (move.Other, Node: place.Inside[move.Sibling]));
        foreach (var (to, node) in moved)
        {
            place.Inside[to] = node;
        }
    }

    /// <returns>How many children came of the frame.</returns>
    private int Insert(RenderBatch batch, ScreenNode parent, int at, int index)
    {
        var frame = batch[index];
        switch (frame.Kind)
        {
            case FrameKind.Element:
                Element(batch, parent, at, index, frame);
                return 1;
            case FrameKind.Text or FrameKind.Markup:
                parent.Inside.Insert(at, new ScreenNode(parent, words: frame.Value ?? ""));
                return 1;
            case FrameKind.Component:
                var place = new ScreenNode(parent);
                parent.Inside.Insert(at, place);
                _components[frame.ComponentId] = place;
                return 1;
            case FrameKind.Region:
                return Range(batch, parent, at, index + 1, index + frame.Length);
            default:
                return 0;
        }
    }

    private void Element(RenderBatch batch, ScreenNode parent, int at, int index, Frame frame)
    {
        var element = new ScreenNode(parent, frame.Name);
        parent.Inside.Insert(at, element);
        var next = index + 1;
        for (; next < index + frame.Length && batch[next].Kind == FrameKind.Attribute; next++)
        {
            element.Set(batch[next]);
        }

        Range(batch, element, 0, next, index + frame.Length);
    }

    private int Range(RenderBatch batch, ScreenNode parent, int at, int from, int to)
    {
        var first = at;
        for (var index = from; index < to; index += batch[index].Length)
        {
            at += Insert(batch, parent, at, index);
        }

        return at - first;
    }
}
